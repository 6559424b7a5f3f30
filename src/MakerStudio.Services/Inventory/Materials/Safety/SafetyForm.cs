using System.Text.Json.Serialization;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// The whole safety sheet of a material: section 2 and 3 of its SDS, its fragrance certificate and the supplier's
/// statements. One save replaces the last. Empty means not stated, which is not the same as not hazardous.
/// </summary>
public sealed record SetSafety : StudioRequest
{
    public Guid MaterialId { get; set; }

    /// <summary>Of the material as a whole, section 2.</summary>
    public HazardLines Hazards { get; set; } = new();

    /// <summary>The sheet these facts are read from, as printed on it: "rev. 4".</summary>
    public string? SheetEdition { get; set; }
    public DateOnly? SheetDate { get; set; }

    /// <summary>Section 3, in the order of the sheet.</summary>
    public List<SubstanceLine> Composition { get; set; } = [];

    /// <summary>Per cent by weight, low-vapour-pressure ones left out.</summary>
    public decimal? VolatilePercent { get; set; }

    /// <summary>Vanillin and ethyl vanillin, per cent by weight.</summary>
    public decimal? VanillinPercent { get; set; }
    public bool HoldsCitrus { get; set; }

    /// <summary>Null where no statement is at hand.</summary>
    public bool? PhthalateFree { get; set; }
    public bool? CmrFree { get; set; }

    /// <summary>Of the standards the certificate was reckoned by: "51".</summary>
    public string? CertificateAmendment { get; set; }
    public DateOnly? CertificateIssuedOn { get; set; }
    public List<CategoryLine> CertificateLimits { get; set; } = [];
    public string? Notes { get; set; }

    /// <summary>The version the form was opened with; 0 while nothing was stated.</summary>
    public uint Version { get; set; }

    public bool IsStated => Version != 0;

    /// <summary>A copy that shares no list with this one.</summary>
    public SetSafety Copy() => this with
    {
        Hazards = Hazards with { },
        Composition = [.. Composition.Select(line => line with { Hazards = line.Hazards with { } })],
        CertificateLimits = [.. CertificateLimits.Select(line => line with { })],
    };
}

/// <summary>Hazards as typed from a sheet; every field may be empty.</summary>
public sealed record HazardLines
{
    /// <summary>"Flam. Liq. 2 H225; Eye Irrit. 2 H319", or "not classified".</summary>
    public string? Classes { get; set; }

    /// <summary>Specific limits in per cent: "Skin Sens. 1A 0.01".</summary>
    public string? Limits { get; set; }

    /// <summary>Acute toxicity estimates: mg/kg, mg/kg, mg/L over 4 h, mg/L over 4 h.</summary>
    public decimal? OralMgPerKg { get; set; }
    public decimal? DermalMgPerKg { get; set; }
    public decimal? VapourMgPerLitre { get; set; }
    public decimal? MistMgPerLitre { get; set; }

    /// <summary>1, 10, 100 …</summary>
    public decimal? AcuteM { get; set; }
    public decimal? ChronicM { get; set; }

    /// <summary>Something besides the classes is filled in.</summary>
    public bool HasMore => this with { Classes = null } != new HazardLines();
}

/// <summary>A substance of section 3. Per cent of the material by weight.</summary>
public sealed record SubstanceLine
{
    /// <summary>Tells two rows of equal content apart on a page; never kept.</summary>
    [JsonIgnore]
    public Guid Row { get; init; } = Guid.CreateVersion7();

    public string? Name { get; set; }
    public string? Cas { get; set; }
    public decimal? LowPercent { get; set; }
    public decimal? HighPercent { get; set; }

    /// <summary>What the supplier told the studio; stands in for the range.</summary>
    public decimal? StatedPercent { get; set; }
    public HazardLines Hazards { get; set; } = new();
}

/// <summary>A category of the fragrance standards and the most that is allowed in it, per cent of the finished product.</summary>
public sealed record CategoryLine
{
    /// <summary>Tells two rows of equal content apart on a page; never kept.</summary>
    [JsonIgnore]
    public Guid Row { get; init; } = Guid.CreateVersion7();

    public string? Category { get; set; }
    public decimal? MaxPercent { get; set; }
}
