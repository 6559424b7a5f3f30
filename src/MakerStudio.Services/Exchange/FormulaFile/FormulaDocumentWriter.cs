using System.Text.Json;
using MakerStudio.Core.Assessing;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>Writes the open format: what <see cref="FormulaDocumentReader"/> reads comes back the same.</summary>
public static class FormulaDocumentWriter
{
    private const decimal Percent = 100m;

    public static byte[] Write(FormulaDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return JsonSaying.Write(json =>
        {
            json.WriteString("format", FormulaDocument.Format);
            json.Object("formula", to => Formula(to, document));
            json.Objects("materials", document.Materials, Material);
            if (document.Market is { } market)
            {
                json.Object("market", to => Market(to, market));
            }
        });
    }

    private static void Formula(Utf8JsonWriter json, FormulaDocument document)
    {
        json.WriteString("name", document.Name);
        json.WriteString("kind", document.Kind.Key);
        json.Text("note", document.Note);
        json.Objects("lines", document.Lines, Line);
        json.Quantity("pack", document.PackMillilitres, "mL");
        json.Quantity("enoughScent", document.EnoughScentPercent, "%");
        json.Flag("sealedSpray", document.HasSealedSpray);
        if (document.Measured != MeasuredFacts.None)
        {
            json.Object("measured", to => Measured(to, document.Measured));
        }
    }

    private static void Line(Utf8JsonWriter json, FileLine line)
    {
        json.WriteString("material", line.Material);
        json.Object("amount", to =>
        {
            if (line.Amount is { } amount)
            {
                to.Number("value", amount);
            }
            else
            {
                to.WriteBoolean("rest", true);
            }

            var (_, ucum, of) = FileWords.Bases.First(each => each.Basis == line.Basis);
            to.WriteString("unit", ucum);
            to.Text("basis", of);
        });
    }

    private static void Measured(Utf8JsonWriter json, MeasuredFacts measured)
    {
        json.Quantity("density", measured.Density?.GramsPerMillilitre, "g/mL");
        json.Quantity("flashPoint", measured.FlashPoint?.Degrees, "Cel");
        json.Quantity("boilingPoint", measured.BoilingPoint?.Degrees, "Cel");
        json.Flag("sustainsCombustion", measured.SustainsCombustion);
        json.Quantity("viscosity", measured.ViscosityMm2PerSecond, "mm2/s");
        json.Quantity("pH", measured.Ph, "[pH]");
    }

    private static void Material(Utf8JsonWriter json, FileMaterial material)
    {
        var facts = material.Facts;
        json.WriteString("id", material.Key);
        json.WriteString("name", facts.Name);
        json.WriteString("kind", FileWords.Name(facts.Kind));
        json.Text("cas", facts.Cas?.Text);
        json.Quantity("density", facts.Density?.GramsPerMillilitre, "g/mL");
        if (facts.Strength is { } strength)
        {
            json.Object("alcoholStrength", to =>
            {
                to.Number("value", strength.Value);
                var (_, ucum, of) = FileWords.Strengths.First(each => each.Basis == strength.Basis);
                to.WriteString("unit", ucum);
                to.Text("basis", of);
            });
        }

        json.Quantity("flashPoint", facts.FlashPoint?.Degrees, "Cel");
        json.Quantity("dropMass", material.DropMassMilligrams, "mg");
        Hazards(json, facts.Hazards);
        if (facts.Composition.Count > 0)
        {
            json.Objects("composition", facts.Composition, Substance);
        }

        if (facts.Certificate is { } certificate)
        {
            json.Object("fragranceCertificate", to => Certificate(to, certificate));
        }

        json.Quantity("volatileShare", facts.VolatilePercent, "%");
        json.Quantity("vanillinShare", facts.VanillinPercent, "%");
        json.Flag("holdsCitrus", facts.HoldsCitrus ? true : null);
        json.Flag("phthalateFree", facts.PhthalateFree);
        json.Flag("cmrFree", facts.CmrFree);
        if (facts.MissingPapers.Count > 0)
        {
            json.Texts("missingPapers", facts.MissingPapers.Select(FileWords.Name));
        }

        json.Quantity("scentShare", facts.ScentShare * Percent, "%");
    }

    private static void Hazards(Utf8JsonWriter json, StatedHazards? hazards)
    {
        if (hazards is null)
        {
            return;
        }

        json.Object("hazards", to =>
        {
            to.Text("classes", Filled(hazards.Classes));
            to.Text("limits", Filled(hazards.Limits));
            if (hazards is not { OralMgPerKg: null, DermalMgPerKg: null, VapourMgPerLitre: null, MistMgPerLitre: null })
            {
                to.Object("acuteToxicity", acute =>
                {
                    acute.Quantity("oral", hazards.OralMgPerKg, "mg/kg");
                    acute.Quantity("dermal", hazards.DermalMgPerKg, "mg/kg");
                    acute.Quantity("vapour", hazards.VapourMgPerLitre, "mg/L");
                    acute.Quantity("mist", hazards.MistMgPerLitre, "mg/L");
                });
            }

            if (hazards is not { AcuteM: null, ChronicM: null })
            {
                to.Object("mFactors", factors =>
                {
                    factors.Number("acute", (decimal?)hazards.AcuteM);
                    factors.Number("chronic", (decimal?)hazards.ChronicM);
                });
            }
        });
    }

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;

    private static void Substance(Utf8JsonWriter json, StatedSubstance part)
    {
        json.WriteString("name", part.Name);
        json.Text("cas", Filled(part.Cas));
        json.Object("share", to =>
        {
            to.Number("low", part.LowPercent);
            to.Number("high", part.HighPercent);
            to.Number("stated", part.StatedPercent);
            to.WriteString("unit", "%");
        });
        Hazards(json, part.Hazards);
    }

    private static void Certificate(Utf8JsonWriter json, FragranceCertificate certificate)
    {
        json.WriteString("amendment", certificate.Amendment);
        json.Text("issuedOn", certificate.IssuedOn?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        Maximum(json, certificate.MaxPercent);
    }

    private static void Maximum(Utf8JsonWriter json, IReadOnlyDictionary<string, decimal> maximum) => json.Object("maximum", to =>
    {
        to.WriteString("unit", "%");
        foreach (var (category, percent) in maximum.OrderBy(each => each.Key, StringComparer.Ordinal))
        {
            to.Number(category, percent);
        }
    });

    private static void Market(Utf8JsonWriter json, MarketChoices market)
    {
        json.WriteString("scheme", FileWords.Schemes.First(each => each.Value.Value == market.Scheme).Key);
        json.WriteString("on", market.On.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        json.Texts("vocLimits", market.VocLimits);
        json.Quantity("allergenThreshold", market.AllergenPercent, "%");
        json.Objects("substanceLimits", market.SubstanceLimits, (to, limit) =>
        {
            to.WriteString("name", limit.Name);
            to.Texts("cas", limit.Cas);
            to.WriteString("amendment", limit.Amendment);
            Maximum(to, limit.MaxPercent);
            to.Flag("isPhototoxic", limit.IsPhototoxic ? true : null);
        });
    }
}
