using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Essential oil spread thin over dry matter spots and oxidises faster than in a bottle.
/// </summary>
public sealed class SachetEssentialOil : AdviceRule
{
    public override string Key => "sachet-essential-oil";

    public override string Title => "Essential oil on dry matter";

    public override string AppliesTo =>
        "A sachet with essential oil.";

    public override string Reason =>
        "Spread thin on petals an essential oil spots them, marks cloth and oxidises faster than in the bottle.";

    public override Citation Source => new("Sealed 2 to 6 weeks, shaken every few days, in a lined bag", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Petals 90, orris root 6, lavender oil 4.",
        ExampleLines.Of(new Sachet(), ExampleLines.Line(ExampleLines.Lavender, 4m), ExampleLines.Line(ExampleLines.Material("Orris root", MaterialKind.Fixative), 6m), ExampleLines.Petals(90m)),
        [
            (AdviceKind.Note, "Lavender oil on dry matter can spot petals and cloth. Drip it on the fixative, keep it sealed for 2 to 6 weeks and shake it every few days; line the bag."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] oils = [.. basis.OfKind(MaterialKind.EssentialOil)];
        if (basis.Form == ProductForm.Dry && oils.Length > 0)
        {
            yield return Give(
                AdviceKind.Note,
                $"{Names(oils)} on dry matter can spot petals and cloth. Drip {Verb(oils, "it", "them")} on the fixative, keep it sealed for 2 to 6 weeks and shake it every few days; line the bag.",
                oils,
                null,
                Step($"Essential oil {100 * oils.Sum(line => line.Fraction):0.00} % of the total by weight."));
        }
    }
}
