using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Finished;

public class CustomersTests
{
    [Fact]
    public async Task List_PageByPage_MissesNobodyAndRepeatsNobody()
    {
        await using var studio = await TestStudio.NewAsync();
        var customers = studio.Get<Customers>();
        foreach (var name in new[] { "Moss, Pim", "Ida Marsh", "ada", "Ida Marsh", "Ötto" })
        {
            (await customers.AddAsync(studio.Ana, new AddCustomer { Name = name })).Expect();
        }

        List<CustomerRow> seen = [];
        for (var page = await customers.ListAsync(take: 2); page.Count > 0; page = await customers.ListAsync(take: 2, after: page[^1]))
        {
            seen.AddRange(page);
        }

        Assert.Equal(5, seen.Select(c => c.Id).Distinct().Count());
        Assert.Equal(5, seen.Count);
        Assert.Equal(seen.Select(c => c.Id), (await customers.ListAsync()).Select(c => c.Id));
        Assert.Equal(2, (await customers.ListAsync("ida")).Count);
    }
}
