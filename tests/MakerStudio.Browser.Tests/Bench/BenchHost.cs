using MakerStudio.Browser.Tests.Host;

namespace MakerStudio.Browser.Tests.Bench;

/// <summary>A studio with full shelves and Fig v1 released; each test plans a batch of its own.</summary>
public sealed class BenchHost : StudioHost
{
    public QuinceYard Yard { get; private set; } = null!;

    protected override async Task SettleInAsync()
    {
        await base.SettleInAsync();
        Yard = new QuinceYard(this);
        await Yard.AddMaterialsAsync();
        await Yard.FillShelvesAsync();
        await Yard.ReleaseFigAsync();
    }

    /// <summary>Milligrams of a material on all its lots.</summary>
    public Task<long> OnHandAsync(string material) => App.ValueAsync<long>(
        "select sum(b.on_hand) from lot_balances b join lots l on l.id = b.lot_id where l.material_id = $1", Yard.Material(material));

    /// <summary>Weighings of a batch that stand.</summary>
    public Task<int> WeighingsAsync(Guid batch) => App.ValueAsync<int>("select count(*) from weighings where batch_id = $1", batch);
}
