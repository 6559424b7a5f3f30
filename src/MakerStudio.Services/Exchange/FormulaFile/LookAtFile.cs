using System.Text;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>How a material of a file was found in the storeroom.</summary>
public enum FoundBy
{
    /// <summary>It was not, and would be added.</summary>
    Nothing,
    Name,

    /// <summary>One material of the kind has its CAS number.</summary>
    Cas,
}

/// <param name="Name">In the file.</param>
/// <param name="MaterialId">The material that would be used; null where it would be added.</param>
/// <param name="UsedName">Its name in the storeroom.</param>
public sealed record MaterialSeen(string Name, FoundBy By, Guid? MaterialId, string? UsedName);

/// <summary>What bringing a file in would do; nothing has been done yet.</summary>
/// <param name="Document">Null where there are faults.</param>
/// <param name="Materials">In the order of the file.</param>
public sealed record FileSeen(FormulaDocument? Document, IReadOnlyList<FileFault> Faults, IReadOnlyList<MaterialSeen> Materials);

public sealed partial class FormulaFiles
{
    /// <summary>Reads a file and looks up its materials, for a preview.</summary>
    public async Task<FileSeen> LookAtAsync(string json, CancellationToken cancel = default)
    {
        var (document, faults) = Read(json);
        if (document is null)
        {
            return new(null, faults, []);
        }

        await using var db = await store.ReadAsync(cancel);
        return new(document, [], await SeeAsync(db, document, cancel));
    }

    /// <summary>By the rules of the format and by those of the library and the storeroom.</summary>
    internal static (FormulaDocument? Document, IReadOnlyList<FileFault> Faults) Read(string json)
    {
        var (document, faults) = FormulaDocumentReader.Read(Encoding.UTF8.GetBytes(json));
        if (document is null)
        {
            return (null, faults);
        }

        List<FileFault> found = [.. document.Materials.SelectMany(MaterialForms.Faults)];
        if (document.Name.Length > Formulas.LongestName)
        {
            found.Add(new("$.formula.name", $"The library keeps names of at most {Formulas.LongestName} characters. Shorten it."));
        }

        if (document.Lines.Count > Versions.MostLines)
        {
            found.Add(new("$.formula.lines", $"The library keeps at most {Versions.MostLines} lines. Make a pre-blend of some."));
        }

        found.AddRange(document.Materials.GroupBy(material => material.Facts.Name.Trim().ToLowerInvariant()).Where(same => same.Count() > 1).Select(same =>
            new FileFault("$.materials", $"Two materials bear the name {same.First().Facts.Name}. Give each a name of its own.")));
        return found.Count == 0 ? (document, []) : (null, found);
    }

    /// <summary>A material on the shelf of the same name; else the only one of the same kind and CAS number. What it is in the storeroom stays as it is.</summary>
    private static async Task<IReadOnlyList<MaterialSeen>> SeeAsync(StudioDb db, FormulaDocument document, CancellationToken cancel)
    {
        string[] names = [.. document.Materials.Select(material => material.Facts.Name.Trim().ToLowerInvariant())];
        string[] numbers = [.. document.Materials.Select(material => material.Facts.Cas?.Text).OfType<string>()];
        var known = await db.Materials.Where(m => m.ArchivedAt == null && (names.Contains(m.Name.ToLower()) || numbers.Contains(m.Cas)))
            .Select(m => new { m.Id, m.Name, m.Cas, m.Kind, m.StockedIn }).ToListAsync(cancel);
        var seen = new List<MaterialSeen>();
        foreach (var material in document.Materials)
        {
            var facts = material.Facts;
            var named = known.Find(m => string.Equals(m.Name.Trim(), facts.Name.Trim(), StringComparison.OrdinalIgnoreCase));
            var numbered = known.FindAll(m => facts.Cas is not null && m.Cas == facts.Cas.Text && m.Kind == facts.Kind && m.StockedIn == StockUnit.Gram);
            seen.Add(named is not null ? new(facts.Name, FoundBy.Name, named.Id, named.Name)
                : numbered is [var only] ? new(facts.Name, FoundBy.Cas, only.Id, only.Name)
                : new(facts.Name, FoundBy.Nothing, null, null));
        }

        return seen;
    }
}
