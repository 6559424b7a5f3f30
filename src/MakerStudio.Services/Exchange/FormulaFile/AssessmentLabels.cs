using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Workings;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>The label elements of an assessment as JSON, under the scheme it was made for.</summary>
internal static class AssessmentLabels
{
    internal static void Write(Utf8JsonWriter json, Assessment assessment)
    {
        if (assessment.Label is { } label)
        {
            json.Object("label", to => Clp(to, label));
        }

        if (assessment.UsLabel is { } words)
        {
            json.Object("usLabel", to => Us(to, words));
        }
    }

    private static void Clp(Utf8JsonWriter json, HazardLabel label)
    {
        json.Text("signalWord", label.Signal == SignalWord.None ? null : label.Signal.ToString());
        json.Texts("pictograms", label.Pictograms.Select(Pictograms.Code));
        Statements(json, "hazardStatements", label.HazardStatements);
        Statements(json, "precautionaryStatements", label.Precautions.Chosen);
        json.Objects("precautionsLeftOut", label.Precautions.LeftOut, (to, each) =>
        {
            to.WriteString("code", each.Code);
            to.WriteString("why", each.Why);
        });
        json.Objects("supplemental", label.Supplemental, (to, sentence) =>
        {
            to.WriteString("code", sentence.Code);
            to.WriteString("text", sentence.Text);
        });
        json.Texts("substancesToName", label.SubstancesToName);
        json.Object("smallPack", to =>
        {
            to.WriteBoolean("applies", label.SmallPack.IsSmallPack);
            to.Texts("hazardStatementsMayBeLeftOut", label.SmallPack.HazardStatements);
            to.Texts("precautionsMayBeLeftOut", label.SmallPack.Precautions);
        });
        Duty(json, "childResistantClosure", label.ChildResistant);
        Duty(json, "tactileWarning", label.Tactile);
        json.WriteBoolean("needsUfi", label.NeedsUfi);
        json.Texts("notices", label.Notices);
    }

    private static void Statements(Utf8JsonWriter json, string name, IReadOnlyList<LabelStatement> statements) =>
        json.Objects(name, statements, (to, statement) =>
        {
            to.WriteString("code", statement.Code);
            to.WriteString("text", statement.Text);
        });

    private static void Duty(Utf8JsonWriter json, string name, PackDuty duty) => json.Object(name, to =>
    {
        to.WriteBoolean("isNeeded", duty.IsNeeded);
        to.Texts("because", duty.Because);
    });

    private static void Us(Utf8JsonWriter json, FhsaLabel label)
    {
        json.Text("signalWord", label.Signal);
        json.WriteBoolean("showsPoison", label.ShowsPoison);
        json.WriteString("fireBand", FileWords.Name(label.Band));
        json.Objects("statements", label.Statements, (to, statement) =>
        {
            to.WriteString("text", statement.Text);
            to.WriteString("source", statement.From.Text);
            to.WriteString("status", DataStatuses.Letter(statement.From.Status));
        });
        json.Texts("unknown", label.Unknown);
    }
}
