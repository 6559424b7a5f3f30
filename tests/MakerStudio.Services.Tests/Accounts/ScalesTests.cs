using MakerStudio.Services.Accounts;

namespace MakerStudio.Services.Tests.Accounts;

public sealed class ScalesTests
{
    [Fact]
    public async Task Scale_AddedAndRetired_StaysInTheListForTheRecords()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        (await settings.AddScaleAsync(studio.Ana, new AddScale { Name = "Scale 3", CapacityMilligrams = 200_000, ReadabilityMilligrams = 10 })).Expect();
        var added = (await settings.ScalesAsync()).Single(s => s.Name == "Scale 3");

        (await settings.RetireScaleAsync(studio.Ana, new RetireScale { ScaleId = added.Id })).Expect();

        Assert.NotNull((await settings.ScalesAsync()).Single(s => s.Id == added.Id).RetiredAt);
        Assert.IsType<NotFound>((await settings.RetireScaleAsync(studio.Ana, new RetireScale { ScaleId = added.Id })).Refusal);
    }

    [Theory]
    [InlineData("", 200_000, 10, "Name")]
    [InlineData("Scale", 200_000, 0, "ReadabilityMilligrams")]
    [InlineData("Scale", 10, 10, "CapacityMilligrams")]
    public async Task Scale_ThatCannotBe_IsRefusedByField(string name, long capacity, long readability, string field)
    {
        await using var studio = await TestStudio.NewAsync();

        var outcome = await studio.Get<StudioSettings>().AddScaleAsync(studio.Ana, new AddScale { Name = name, CapacityMilligrams = capacity, ReadabilityMilligrams = readability });

        Assert.Equal(field, Assert.Single(Assert.IsType<NotAcceptable>(outcome.Refusal).Problems).Field);
    }
}
