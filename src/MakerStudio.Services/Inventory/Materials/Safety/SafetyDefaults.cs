using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Services.Inventory;

/// <summary>What the built-in table of substances offers for a CAS number, to be put into a form and looked at.</summary>
/// <param name="AlsoSeen">Where sheets differ, and what to check; may be null.</param>
/// <param name="From">Where the row is from, with its status.</param>
public sealed record SafetyDefault(string Name, HazardLines Hazards, string? AlsoSeen, Citation From)
{
    /// <summary>Null where the number is not in the table, or is none.</summary>
    public static SafetyDefault? For(string? cas)
    {
        if (!CasNumber.TryParse(cas, out var number, out _) || SubstanceTable.Rows.FirstOrDefault(row => row.Cas == number.Text) is not { } row)
        {
            return null;
        }

        return new(row.Name, new HazardLines
        {
            Classes = row.DriesSkin ? $"{row.Classes}; EUH066" : row.Classes,
            Limits = row.Limits, OralMgPerKg = row.Oral, MistMgPerLitre = row.Mist, AcuteM = row.AcuteM, ChronicM = row.ChronicM,
        }, row.AlsoSeen, SubstanceTable.Source);
    }
}
