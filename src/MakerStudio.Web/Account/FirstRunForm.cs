using System.Globalization;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Accounts;
using MakerStudio.Web.Shell.Fields;

namespace MakerStudio.Web.Account;

/// <summary>The set-up page as it is typed; every text comes back as it was.</summary>
public sealed class FirstRunForm
{
    public const int ScaleRows = 3;
    private const int MoneyDecimals = 2;

    public Guid RequestId { get; set; } = Guid.CreateVersion7();
    public string SecondToken { get; set; } = OneTimeToken.New();
    public string? Name { get; set; }
    public string? Phone { get; set; }
    public string? Address { get; set; }
    public string? PersonName { get; set; }
    public string? Initials { get; set; }
    public string? Passphrase { get; set; }
    public string? SecondName { get; set; }
    public string? TimeZone { get; set; }
    public string? Culture { get; set; }
    public string? Currency { get; set; }
    public string? LabourRatePerHour { get; set; }
    public string? TolerancePercent { get; set; }
    public string? ToleranceDivisions { get; set; }
    public List<TypedScale> Scales { get; set; } = [];

    public sealed class TypedScale
    {
        public string? Name { get; set; }
        public string? CapacityMilligrams { get; set; }
        public string? ReadabilityMilligrams { get; set; }

        internal bool IsBlank => string.IsNullOrWhiteSpace(CapacityMilligrams) && string.IsNullOrWhiteSpace(ReadabilityMilligrams);
    }

    /// <summary>What stands there before anything is typed: the usual values of the request, one common scale.</summary>
    public static FirstRunForm Fresh()
    {
        var usual = new SetUpStudio();
        return new FirstRunForm
        {
            TimeZone = usual.TimeZone, Culture = usual.Culture, Currency = usual.Currency, LabourRatePerHour = QuantityReadout.Plain(usual.LabourRatePerHour),
            TolerancePercent = QuantityReadout.Plain(usual.TolerancePercent), ToleranceDivisions = usual.ToleranceDivisions.ToString(CultureInfo.InvariantCulture),
            Scales = [new TypedScale { Name = "Scale 1", CapacityMilligrams = "5 kg", ReadabilityMilligrams = $"{QuantityReadout.Plain(0.1m)} g" }],
        };
    }

    /// <summary>Filled scale rows first, then empty ones up to <see cref="ScaleRows"/>.</summary>
    public void TidyScales()
    {
        Scales.RemoveAll(scale => scale.IsBlank);
        while (Scales.Count < ScaleRows)
        {
            Scales.Add(new TypedScale());
        }
    }

    /// <summary>Reads the numbers; what cannot be read goes into the problems, and the request is then not to be sent.</summary>
    public SetUpStudio Read(string? token, FormProblems problems)
    {
        var request = new SetUpStudio
        {
            RequestId = RequestId, SecondToken = SecondToken, Token = token ?? "", Name = Name ?? "", Phone = Phone, Address = Address, TimeZone = TimeZone ?? "",
            Culture = Culture ?? "", Currency = Currency ?? "", PersonName = PersonName ?? "", Initials = Initials ?? "", Passphrase = Passphrase ?? "",
            SecondName = SecondName, LabourRatePerHour = Number(LabourRatePerHour, nameof(LabourRatePerHour), MoneyDecimals, problems),
            TolerancePercent = Number(TolerancePercent, nameof(TolerancePercent), 3, problems),
            ToleranceDivisions = (int)Number(ToleranceDivisions, nameof(ToleranceDivisions), 0, problems, largest: 1000),
        };
        foreach (var (scale, index) in Scales.Select((scale, index) => (scale, index)).Where(s => !s.scale.IsBlank))
        {
            var name = string.IsNullOrWhiteSpace(scale.Name) ? $"Scale {index + 1}" : scale.Name;
            request.Scales.Add(new NewScale(
                name, TypedMass.Read(scale.CapacityMilligrams, $"Scales[{index}].CapacityMilligrams", problems),
                TypedMass.Read(scale.ReadabilityMilligrams, $"Scales[{index}].ReadabilityMilligrams", problems)));
        }

        return request;
    }

    private static decimal Number(string? text, string field, int decimals, FormProblems problems, decimal largest = 1_000_000m)
    {
        switch (QuantityText.Parse(text, new QuantityTextOptions(QuantityReadout.DecimalMark, MaxDecimals: decimals, Largest: largest)))
        {
            case QuantityReading.Read { Unit: null } read:
                return read.Value;
            case QuantityReading.Unreadable unreadable:
                problems.Add(field, unreadable.Why);
                return 0;
            default:
                problems.Add(field, "Type the number alone here.");
                return 0;
        }
    }
}

/// <summary>A mass typed with its unit, such as "5 kg" or "0.1 g"; a bare number is grams.</summary>
internal static class TypedMass
{
    /// <summary>Milligrams; 0 with a problem noted when it cannot be read.</summary>
    public static long Read(string? text, string field, FormProblems problems)
    {
        switch (QuantityText.Parse(text, new QuantityTextOptions(QuantityReadout.DecimalMark, AmountUnits.Symbol(AmountUnit.Gram), AllowZero: false)))
        {
            case QuantityReading.Unreadable unreadable:
                problems.Add(field, unreadable.Why);
                return 0;
            case QuantityReading.Asks asks:
                problems.Add(field, asks.Question);
                return 0;
            case QuantityReading.Read read when AmountConversion.ToStock(read.Value, read.AmountUnit ?? AmountUnit.Gram, StockUnit.Gram, null)
                is ConversionResult.Converted converted && (read.Unit is null || read.AmountUnit is not null):
                return converted.Amount.Units;
            default:
                problems.Add(field, "Type a weight, such as 5 kg or 0.1 g.");
                return 0;
        }
    }
}
