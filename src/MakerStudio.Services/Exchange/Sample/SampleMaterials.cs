using System.Text;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>What the sample studio keeps on its shelves, and the papers filed with it.</summary>
internal sealed class SampleMaterials(Story story)
{
    private const string Edition = "edition 4";

    public IEnumerable<SampleAct> Acts()
    {
        foreach (var (form, index) in SampleMaterialList.All.Select((form, index) => (form, index)))
        {
            yield return new SampleAct(story.Day(Story.Days, 9).AddMinutes(index * 3), () => AddAsync(form, index));
        }
    }

    private async Task AddAsync(AddMaterial form, int index)
    {
        var actor = index % 3 == 2 ? story.Bo : story.Ana;
        var added = (await story.Materials.AddAsync(actor, form with { RequestId = Guid.CreateVersion7() })).Expect();
        story.MaterialIds[added.Name] = added.Id;
        story.Clock.Pass(1);
        foreach (var kind in form.RequiredPapers.Where(kind => !PaperCheck.IsPerLot(kind)))
        {
            await FileAsync(story, actor, new AddPaper { MaterialId = added.Id, Kind = kind, Edition = Edition, EditionDate = EditionOf(index) }, added.Name);
        }

        await WriteSafetyAsync(actor, added, index);
    }

    /// <summary>Typed off the papers just filed.</summary>
    private async Task WriteSafetyAsync(Actor actor, MaterialAdded material, int index)
    {
        if (SampleSafetyList.For(material.Name) is not { } safety)
        {
            return;
        }

        story.Clock.Pass(1);
        (await story.Materials.SetSafetyAsync(actor, safety with
        {
            RequestId = Guid.CreateVersion7(), MaterialId = material.Id, SheetEdition = Edition, SheetDate = EditionOf(index),
            CertificateIssuedOn = safety.CertificateAmendment is null ? null : EditionOf(index),
        })).Expect();
    }

    private DateOnly EditionOf(int index) => story.Date.AddDays(-120 - (index * 5));

    /// <summary>Files a paper of plain text that says that it is invented.</summary>
    public static async Task FileAsync(Story story, Actor actor, AddPaper paper, string about)
    {
        var title = PaperKinds.Name(paper.Kind);
        paper.FileName = $"{title} {about}.txt";
        paper.Content = Encoding.UTF8.GetBytes(
            $"{title.ToUpperInvariant()}\n{about}\n\nInvented for the sample studio, to practise with. It says nothing about any real material.\n");
        (await story.Papers.AddAsync(actor, paper)).Expect();
    }
}
