using System.Security.Cryptography;
using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Files an uploaded paper with a material or with one of its lots.</summary>
public sealed record AddPaper : StudioRequest
{
    /// <summary>10 MiB.</summary>
    public const int MostBytes = 10 * 1024 * 1024;

    public Guid MaterialId { get; set; }
    public Guid? LotId { get; set; }
    public PaperKind Kind { get; set; }

    /// <summary>As printed on it: "rev. 4".</summary>
    public string? Edition { get; set; }
    public DateOnly? EditionDate { get; set; }
    public string? FileName { get; set; }

    [JsonIgnore]
    public byte[] Content { get; set; } = [];

    /// <summary>Stands for the content where requests are compared.</summary>
    public string ContentHash => Convert.ToHexString(SHA256.HashData(Content));
}

public sealed record PaperAdded(Guid Id, string FileName);

public sealed class AddPaperValidator : AbstractValidator<AddPaper>
{
    private static readonly DateOnly Earliest = new(1990, 1, 1);

    public AddPaperValidator()
    {
        RuleFor(p => p.Kind).IsInEnum().WithMessage("Choose what paper this is.");
        RuleFor(p => p.Edition).OneLine("The edition", 40);
        RuleFor(p => p.EditionDate).Must(d => d is null || d >= Earliest).WithMessage("The edition date lies before 1990. Type it as it is printed on the paper.");
        RuleFor(p => p.Content).Cascade(CascadeMode.Stop)
            .NotEmpty().WithMessage("Choose a file; this one is empty.")
            .Must(c => c.Length <= AddPaper.MostBytes).WithMessage("A paper has at most 10 MB.")
            .Must(c => PaperType.Of(c) is not null).WithMessage("Papers are PDF, PNG, JPEG or plain text; what is in this file is none of them, whatever its name says.");
        RuleFor(p => p.LotId).Must((p, lot) => lot is not null || !PaperCheck.IsPerLot(p.Kind)).WithMessage("A CoA tells of one lot. Choose the lot.");
    }
}

public sealed partial class Papers
{
    private static readonly AddPaperValidator AddShape = new();

    public Task<Outcome<PaperAdded>> AddAsync(Actor actor, AddPaper request, CancellationToken cancel = default) =>
        store.RunAsync<AddPaper, PaperAdded>(actor, request, AddShape, async command =>
        {
            var material = await command.Db.Materials.Where(m => m.Id == request.MaterialId).Select(m => m.Name).SingleOrDefaultAsync(cancel);
            var lot = await command.Db.Lots.Where(l => l.Id == request.LotId && l.MaterialId == request.MaterialId).Select(l => l.Code).SingleOrDefaultAsync(cancel);
            if (material is null || (request.LotId is not null && lot is null))
            {
                return new NotFound(material is null ? "This material" : "This lot");
            }

            if (request.EditionDate > command.Today.AddDays(1))
            {
                return new NotAcceptable([new FieldProblem(nameof(AddPaper.EditionDate), "The edition date lies ahead of today.")]);
            }

            var type = PaperType.Of(request.Content)!;
            var paper = new Paper
            {
                MaterialId = request.MaterialId, LotId = request.LotId, Kind = request.Kind,
                Edition = string.IsNullOrWhiteSpace(request.Edition) ? null : request.Edition.Trim(), EditionDate = request.EditionDate,
                FileName = PaperName.Tidy(request.FileName, type), ContentType = type.ContentType,
                Content = request.Content, Size = request.Content.Length, AddedById = command.PersonId, AddedAt = command.Now,
            };
            command.Db.Papers.Add(paper);
            command.Record("material", request.MaterialId, $"Filed {PaperKinds.Name(paper.Kind)} {paper.FileName}{(lot is null ? "" : $" with {lot}")}", Topics.Materials);
            return new PaperAdded(paper.Id, paper.FileName);
        }, cancel: cancel);
}
