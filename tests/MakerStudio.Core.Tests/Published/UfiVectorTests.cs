using CsCheck;
using MakerStudio.Core.Hazards.Ufi;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Data/ufi_test_vectors.csv: three published codes, the rest derived; each row names its source.</summary>
public class UfiVectorTests
{
    private static readonly string[][] Rows = [.. File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", "Data", "ufi_test_vectors.csv"))
        .Skip(1)
        .Select(line => line.Split(','))];

    public static TheoryData<string, bool, string, string, string> Vectors
    {
        get
        {
            var data = new TheoryData<string, bool, string, string, string>();
            foreach (string[] row in Rows)
            {
                data.Add(row[0], row[1].StartsWith("valid", StringComparison.Ordinal), row[2], row[3], row[4]);
            }

            return data;
        }
    }

    [Fact]
    public void Vectors_AreAllThere() => Assert.Equal(10, Rows.Length);

    [Theory]
    [MemberData(nameof(Vectors))]
    public void Vector_ReadsAndWritesExactly(string ufi, bool isValid, string entity, string number, string formulation)
    {
        Assert.Equal(isValid, UfiCode.TryParse(ufi, out UfiCode? read, out string? why));
        if (!isValid)
        {
            Assert.NotEmpty(why!);
            return;
        }

        UfiEntity whose = Entity(entity);
        Assert.Equal(new UfiContent(whose, ulong.Parse(number, Invariant), uint.Parse(formulation, Invariant)), read!.Content);
        string typed = whose == UfiEntity.Belgium ? number.PadLeft(10, '0') : number;
        Assert.True(UfiCode.TryEncode(whose, typed, uint.Parse(formulation, Invariant), out UfiCode? written, out _));
        Assert.Equal(ufi.Replace("-", "", StringComparison.Ordinal), written.Text.Replace("-", "", StringComparison.Ordinal));
        Assert.Equal(read.Text, written.Text);
    }

    [Theory]
    [InlineData(" ufi: n1qv-r02n-j00m-wqd5 ")]
    [InlineData("UFI:N1QVR02NJ00MWQD5")]
    public void Parse_AsPeopleTypeIt_IsTaken(string typed)
    {
        Assert.True(UfiCode.TryParse(typed, out UfiCode? code, out _));
        Assert.Equal("N1QV-R02N-J00M-WQD5", code.Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("N1QV-R02N-J00M")]
    [InlineData("N1-QVR02NJ00M-WQ-D5")]
    [InlineData("N1QV-R02N-J00M-WQD5-0000")]
    [InlineData("VDU1-414F-1003-1862")] // Shown as an illustration in places; its check character does not agree.
    public void Parse_NoCode_SaysWhy(string? typed)
    {
        Assert.False(UfiCode.TryParse(typed, out _, out string? why));
        Assert.NotEmpty(why);
    }

    [Fact]
    public void Parse_OneCharacterChanged_IsAlwaysSeen()
    {
        const string code = "R3NN3KVT2XSGW43J";
        const string alphabet = "0123456789ACDEFGHJKMNPQRSTUVWXY";
        for (int place = 0; place < code.Length; place++)
        {
            foreach (char other in alphabet.Where(each => each != code[place]))
            {
                Assert.False(UfiCode.TryParse(code[..place] + other + code[(place + 1)..], out _, out _));
            }
        }
    }

    [Theory]
    [InlineData(UfiEntity.Germany, "12345678")]
    [InlineData(UfiEntity.Germany, "DE123456789")]
    [InlineData(UfiEntity.Belgium, "408220342")]
    [InlineData(UfiEntity.Belgium, "4082203420")]
    [InlineData(UfiEntity.CompanyKey, "2199023255552")] // 2^41
    [InlineData(UfiEntity.CompanyKey, "99999999999999999999")]
    public void Encode_NumberThatIsNone_SaysWhy(UfiEntity entity, string number)
    {
        Assert.False(UfiCode.TryEncode(entity, number, 1, out _, out string? why));
        Assert.NotEmpty(why);
    }

    [Fact]
    public void Encode_FormulationTooLarge_SaysWhy() =>
        Assert.False(UfiCode.TryEncode(UfiEntity.CompanyKey, "1", UfiCode.LargestFormulation + 1, out _, out _));

    [Fact]
    public void EncodeThenParse_AnyNumber_ComesBack() =>
        Gen.Select(Gen.Enum<UfiEntity>(), Gen.Long[0, 999_999_999], Gen.UInt[0, UfiCode.LargestFormulation]).Sample((entity, number, formulation) =>
        {
            int digits = entity == UfiEntity.Belgium ? 10 : 9;
            Assert.True(UfiCode.TryEncode(entity, number.ToString(Invariant).PadLeft(digits, '0'), formulation, out UfiCode? code, out _));
            Assert.True(UfiCode.TryParse(code.Text, out UfiCode? back, out _));
            Assert.Equal(new UfiContent(entity, (ulong)number, formulation), back.Content);
        });

    private static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;

    private static UfiEntity Entity(string text) => text switch
    {
        "DE" => UfiEntity.Germany,
        "BE" => UfiEntity.Belgium,
        "GB" => UfiEntity.UnitedKingdom,
        _ => UfiEntity.CompanyKey,
    };
}
