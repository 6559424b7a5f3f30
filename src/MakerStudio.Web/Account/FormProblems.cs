using MakerStudio.Services;

namespace MakerStudio.Web.Account;

/// <summary>What a posted form answers: problems at fields, or one refusal for the whole.</summary>
public sealed class FormProblems
{
    private readonly List<FieldProblem> _problems = [];

    /// <summary>A refusal that belongs to no field.</summary>
    public Refusal? Whole { get; private set; }

    public bool Any => _problems.Count > 0 || Whole is not null;

    public void Add(string field, string problem) => _problems.Add(new FieldProblem(field, problem));

    public void Take(Refusal refusal)
    {
        if (refusal is NotAcceptable shape)
        {
            _problems.AddRange(shape.Problems);
        }
        else
        {
            Whole = refusal;
        }
    }

    /// <param name="name">A field's posted name; the form's own part before the first dot is left out.</param>
    public IReadOnlyList<string> At(string name)
    {
        var field = name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..];
        return [.. _problems.Where(p => p.Field == field).Select(p => p.Problem).Distinct()];
    }
}
