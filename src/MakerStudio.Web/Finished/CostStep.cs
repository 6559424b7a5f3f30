using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Finished;

/// <param name="Amount">Money for the whole batch, not rounded.</param>
public sealed record CostStep(string Name, decimal Amount, Series Series);
