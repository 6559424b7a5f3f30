using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Accounts;

public class WhereWeSellTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public async Task WhereWeSell_NothingChosen_SaysSoAndTakesDefaults()
    {
        await using var studio = await TestStudio.NewAsync();
        await using var db = studio.Db();

        var read = await Markets.ReadAsync(db, Today, default);

        Assert.False(read.IsChosen);
        Assert.Equal((LabelScheme.EuropeanUnion, null, Today), (read.Choices.Scheme, read.Choices.AllergenPercent, read.Choices.On));
        Assert.Null((await studio.Get<StudioSettings>().WhereWeSellAsync()).Scheme);
    }

    [Fact]
    public async Task SetWhereWeSell_EveryField_ComesBackAsTypedAndAsChoices()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var typed = Typed();

        (await settings.SetWhereWeSellAsync(studio.Ana, typed)).Expect();
        var read = await settings.WhereWeSellAsync();
        await using var db = studio.Db();
        var market = await Markets.ReadAsync(db, Today, default);

        Assert.Equal(Json(typed), Json(read));
        Assert.True(market.IsChosen);
        Assert.Equal(typed.VocLimits, market.Choices.VocLimits);
        var limit = Assert.Single(market.Choices.SubstanceLimits);
        Assert.Equal(["97-54-1", "97-53-0"], limit.Cas);
        Assert.Equal((0.2m, true), (limit.MaxPercent["10A"], limit.IsPhototoxic));
        Assert.Equal([50_000m, null], market.FlammableLimits.Select(l => l.Volume?.Millilitres));
        Assert.Equal([null, 20_000m], market.FlammableLimits.Select(l => l.Mass?.Grams));
        Assert.Equal(DataStatus.Memory, market.FlammableLimits[0].Source!.Status);
        Assert.Equal(new UfiOwner(UfiEntity.Germany, "123456788"), market.Ufi);
    }

    [Fact]
    public async Task SetWhereWeSell_SomebodySavedBefore_IsStale()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        (await settings.SetWhereWeSellAsync(studio.Ana, Typed())).Expect();

        var late = Typed();
        late.Scheme = LabelScheme.UnitedStates;
        var stale = Assert.IsType<Stale>((await settings.SetWhereWeSellAsync(studio.Ana, late)).Refusal);

        Assert.Equal("Ana", stale.ChangedBy);
        Assert.Equal(LabelScheme.EuropeanUnion, (await settings.WhereWeSellAsync()).Scheme);
        late.Version = (await settings.WhereWeSellAsync()).Version;
        (await settings.SetWhereWeSellAsync(studio.Ana, late)).Expect();
        Assert.Equal(LabelScheme.UnitedStates, (await settings.WhereWeSellAsync()).Scheme);
    }

    [Fact]
    public async Task SetWhereWeSell_ByAMaker_IsForOwners()
    {
        await using var studio = await TestStudio.NewAsync();
        Assert.IsType<OwnersOnly>((await studio.Get<StudioSettings>().SetWhereWeSellAsync(studio.Bo, Typed())).Refusal);
    }

    public static TheoryData<string, string, Action<SetWhereWeSell>> Refused => new()
    {
        { "Scheme", "Choose the rules", m => m.Scheme = null },
        { "VocLimits[1]", "not in the table", m => m.VocLimits.Add("nowhere") },
        { "AllergenPercent", "above 0", m => m.AllergenPercent = 0 },
        { "UfiNumber", "digits", m => m.UfiNumber = "12" },
        { "UfiNumber", "Whose number", m => m.UfiEntity = null },
        { "SubstanceLimits[0].Cas", "should end in", m => m.SubstanceLimits[0].Cas = "97-54-2" },
        { "SubstanceLimits[0].Categories", "at least one", m => m.SubstanceLimits[0].Categories.Clear() },
        { "SubstanceLimits[0].Categories[0].Category", "no such category", m => m.SubstanceLimits[0].Categories[0].Category = "x" },
        { "FlammableLimits[0].Counts", "Choose which", m => m.FlammableLimits[0].Counts.Clear() },
        { "FlammableLimits[1].Most", "above 0", m => m.FlammableLimits[1].Most = 0 },
        { "FlammableLimits[1].Name", "Whose limit", m => m.FlammableLimits[1].Name = "" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void SetWhereWeSell_WhatCannotBe_IsRefusedAtItsField(string field, string says, Action<SetWhereWeSell> spoil)
    {
        var typed = Typed();
        spoil(typed);

        var problem = Assert.Single(new SetWhereWeSellValidator().Validate(typed).Errors);

        Assert.Equal(field, problem.PropertyName);
        Assert.Contains(says, problem.ErrorMessage, StringComparison.OrdinalIgnoreCase);
    }

    private static SetWhereWeSell Typed() => new()
    {
        Scheme = LabelScheme.EuropeanUnion, VocLimits = [VocLimits.All[0].Key], AllergenPercent = 0.1m, UfiEntity = UfiEntity.Germany, UfiNumber = "123456788",
        SubstanceLimits = [new() { Name = "isoeugenol and eugenol", Cas = "97-54-1, 97-53-0", Amendment = "51", IsPhototoxic = true, Categories = [new() { Category = "10A", MaxPercent = 0.2m }, new() { Category = "12", MaxPercent = 2 }] }],
        FlammableLimits =
        [
            new() { Name = "UK, workroom cabinet", Counts = [FlammableCategory.Category1, FlammableCategory.Category2], Most = 50, Citation = "DSEAR 2002", Status = DataStatus.Memory },
            new() { Name = "Insurer", Counts = [FlammableCategory.Category2], Most = 20, Measure = FlammableMeasure.Kilograms },
        ],
    };

    private static string Json(SetWhereWeSell m) => JsonSerializer.Serialize(m with { RequestId = Guid.Empty, Version = 0 });
}
