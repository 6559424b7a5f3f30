using MakerStudio.Core.Products;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <param name="Name">With its ending, of plain letters.</param>
public sealed record SavedFile(string Name, byte[] Content);

/// <summary>Formulas of the library as files of the open format, and back.</summary>
public sealed partial class FormulaFiles(StudioStore store)
{
    private const string Ending = ".json";

    /// <summary>A version with its materials and what is known of them; null where there is no such version.</summary>
    public async Task<SavedFile?> SaveAsync(Guid formulaId, int number, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var formula = await db.Formulas.Where(f => f.Id == formulaId).Select(f => new { f.Name, f.ProductKind, f.EnoughScentPercent }).SingleOrDefaultAsync(cancel);
        var version = await FormulaRows.Versions(db, v => v.FormulaId == formulaId && v.Number == number).SingleOrDefaultAsync(cancel);
        if (formula is null || version is null)
        {
            return null;
        }

        Guid[] ids = [.. version.Lines.Select(line => line.MaterialId).Distinct()];
        var facts = await AssessedMaterials.OfAsync(db, ids, cancel);
        var drops = await db.Materials.Where(m => ids.Contains(m.Id)).ToDictionaryAsync(m => m.Id, m => m.DropMilligrams, cancel);
        var pack = await db.FormulaSizes.Where(s => s.FormulaId == formulaId && s.RetiredAt == null).MinAsync(s => s.NominalMillilitres, cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var keys = Keys([.. ids.Select(id => (id, facts.Materials[id].Name))]);
        var document = new FormulaDocument(
            formula.Name,
            ProductKinds.Get(formula.ProductKind),
            [.. version.Lines.Select(line => new FileLine(keys[line.MaterialId], line.Amount, line.Basis))],
            [.. ids.Select(id => new FileMaterial(keys[id], facts.Materials[id], drops[id]))],
            version.Measured.Facts,
            pack,
            formula.EnoughScentPercent,
            Note: string.IsNullOrWhiteSpace(version.Method) ? null : version.Method,
            Market: await Markets.OfAsync(db, today, cancel));
        return new($"{KeyOf(formula.Name)}-v{number}{Ending}", FormulaDocumentWriter.Write(document));
    }

    /// <summary>An id within the file for each material, made from its name.</summary>
    private static Dictionary<Guid, string> Keys(IReadOnlyList<(Guid Id, string Name)> materials)
    {
        var keys = new Dictionary<Guid, string>();
        foreach (var (id, name) in materials)
        {
            var key = KeyOf(name);
            for (var i = 2; keys.ContainsValue(key); i++)
            {
                key = $"{KeyOf(name)}-{i}";
            }

            keys.Add(id, key);
        }

        return keys;
    }

    /// <summary>"Fig fragrance, 2nd" is "fig-fragrance-2nd"; letters that are not plain are left out.</summary>
    private static string KeyOf(string name)
    {
        const int longest = 50;
        var plain = string.Concat(name.Normalize(System.Text.NormalizationForm.FormD).ToLowerInvariant()
            .Where(c => System.Globalization.CharUnicodeInfo.GetUnicodeCategory(c) != System.Globalization.UnicodeCategory.NonSpacingMark)
            .Select(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) ? c : '-'));
        var key = string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return key.Length == 0 ? "material" : key.Length <= longest ? key : key[..longest].TrimEnd('-');
    }
}
