using System.Buffers.Binary;

namespace MakerStudio.Core.Labels.Type;

/// <summary>
/// What a label must know of a TrueType font: how wide each letter is and how high an x, a capital and a figure are.
/// Tables head, hhea, hmtx, cmap (format 4), OS/2, loca and glyf of ISO/IEC 14496-22; kerning is not used, so that a
/// line is as wide in the PDF and on the page as it was measured.
/// </summary>
internal sealed class FontFile
{
    private readonly byte[] _bytes;
    private readonly Dictionary<string, int> _tables = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> _glyphs = [];
    private readonly int _widths;

    public FontFile(byte[] bytes)
    {
        _bytes = bytes;
        for (int i = 0; i < U16(4); i++)
        {
            const int header = 12;
            const int record = 16;
            int at = header + (i * record);
            _tables[System.Text.Encoding.ASCII.GetString(bytes, at, 4)] = (int)U32(at + 8);
        }

        UnitsPerEm = U16(_tables["head"] + 18);
        _widths = U16(_tables["hhea"] + 34);
        XHeight = I16(_tables["OS/2"] + 86);
        CapitalHeight = I16(_tables["OS/2"] + 88);
        ReadCharacters();
        FigureHeight = HighestPoint(_glyphs['0']);
    }

    public int UnitsPerEm { get; }

    public int XHeight { get; }

    public int CapitalHeight { get; }

    public int FigureHeight { get; }

    public bool Has(int character) => _glyphs.ContainsKey(character);

    /// <summary>In units of the em; that of the empty box where the font has no such letter.</summary>
    public int Width(int character)
    {
        const int metric = 4;
        int glyph = _glyphs.GetValueOrDefault(character);
        return U16(_tables["hmtx"] + (Math.Min(glyph, _widths - 1) * metric));
    }

    private void ReadCharacters()
    {
        int cmap = _tables["cmap"];
        for (int i = 0; i < U16(cmap + 2); i++)
        {
            const int entry = 8;
            int at = cmap + 4 + (i * entry);
            int table = cmap + (int)U32(at + 4);
            if (U16(table) == 4)
            {
                ReadSegments(table);
                return;
            }
        }

        throw new InvalidOperationException("The font has no table of characters of format 4.");
    }

    private void ReadSegments(int table)
    {
        int bytes = U16(table + 6);
        int ends = table + 14;
        int starts = ends + bytes + 2;
        int deltas = starts + bytes;
        int offsets = deltas + bytes;
        for (int segment = 0; segment < bytes; segment += 2)
        {
            int offset = U16(offsets + segment);
            for (int character = U16(starts + segment); character <= U16(ends + segment) && character < 0xFFFF; character++)
            {
                int glyph = offset == 0 ? character : U16(offsets + segment + offset + ((character - U16(starts + segment)) * 2));
                glyph = glyph == 0 ? 0 : (glyph + U16(deltas + segment)) & 0xFFFF;
                if (glyph > 0)
                {
                    _glyphs.TryAdd(character, glyph);
                }
            }
        }
    }

    private int HighestPoint(int glyph)
    {
        bool isLong = U16(_tables["head"] + 50) != 0;
        int loca = _tables["loca"];
        int at = isLong ? (int)U32(loca + (glyph * 4)) : U16(loca + (glyph * 2)) * 2;
        return I16(_tables["glyf"] + at + 8);
    }

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_bytes.AsSpan(at));

    private short I16(int at) => BinaryPrimitives.ReadInt16BigEndian(_bytes.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at));
}
