namespace MakerStudio.Web.Shell.Parts;

/// <summary>Our drawings, as the inside of an 18 × 18 svg with a 1.8 line and no fill.</summary>
public static class Glyphs
{
    public const string Scan = """<path d="M2 6V3.5A1.5 1.5 0 0 1 3.5 2H6M12 2h2.5A1.5 1.5 0 0 1 16 3.5V6M16 12v2.5a1.5 1.5 0 0 1-1.5 1.5H12M6 16H3.5A1.5 1.5 0 0 1 2 14.5V12M4.5 9h9"/>""";
    public const string Diamond = """<path d="M9 1.8 16.2 9 9 16.2 1.8 9Z"/><path d="M9 5.8v3.7M9 12v.1"/>""";
    public const string TwoBars = """<rect x="2" y="2" width="14" height="14" rx="1.5"/><path d="M7 6v6M11 6v6"/>""";
    public const string Tick = """<circle cx="9" cy="9" r="7.2"/><path d="m5.6 9.3 2.4 2.4 4.5-5"/>""";
    public const string Scale = """<path d="M2.5 5h13M9 5v3M3.5 16h11a1 1 0 0 0 1-1l-.8-5.5a1.6 1.6 0 0 0-1.6-1.5H4.9a1.6 1.6 0 0 0-1.6 1.5L2.5 15a1 1 0 0 0 1 1Z"/><path d="M6.5 12.5h5"/>""";
    public const string DashedSquare = """<rect x="2" y="2" width="14" height="14" rx="1.5" stroke-dasharray="3.2 2.4"/><path d="M9 5v4.5M9 12.3v.1"/>""";
    public const string Calendar = """<rect x="2.2" y="3.5" width="13.6" height="12.5" rx="1.5"/><path d="M2.2 7.5h13.6M6 1.8v3M12 1.8v3"/>""";
    public const string Lines = """<path d="M2.5 5h13M2.5 9h13M2.5 13h13"/>""";
    public const string Pen = """<path d="m3 15 .8-3.2L12.5 3a1.7 1.7 0 0 1 2.4 2.4L6.2 14.2Z"/>""";
    public const string Cross = """<circle cx="9" cy="9" r="7.2"/><path d="m6.2 6.2 5.6 5.6M11.8 6.2l-5.6 5.6"/>""";
    public const string Lock = """<rect x="3.5" y="8" width="11" height="8" rx="1.2"/><path d="M6 8V5.5a3 3 0 0 1 6 0V8"/>""";
    public const string Plus = """<path d="M9 3v12M3 9h12"/>""";
    public const string Triangle = """<path d="M9 2 17 15.8H1Z"/><path d="M9 7v4M9 13.4v.1"/>""";
    public const string Info = """<circle cx="9" cy="9" r="7.2"/><path d="M9 8.2V13M9 5.3v.1"/>""";
    public const string Back = """<path d="M12 3.5 6 9l6 5.5"/>""";
    public const string Forward = """<path d="m6 3.5 6 5.5-6 5.5"/>""";
    public const string Delete = """<path d="M6 3.5h10v11H6L1.5 9ZM9 7l4 4M13 7l-4 4"/>""";
    public const string Speaker = """<path d="M3 11V7h3l4-3.5v11L6 11ZM12.5 6.5a3.5 3.5 0 0 1 0 5M14.5 4.5a6.5 6.5 0 0 1 0 9"/>""";
    public const string Hourglass = """<path d="M5 1.8h8M5 16.2h8M6 1.8c0 4 6 4.6 6 7.2s-6 3.2-6 7.2M12 1.8c0 4-6 4.6-6 7.2s6 3.2 6 7.2"/>""";
    public const string Bottles = """<path d="M1.5 15.5h15M4 15.5V8.5c0-1 .8-1.2.8-2.2V3.5h2.4v2.8c0 1 .8 1.2.8 2.2v7M10.5 15.5v-9h4v9"/>""";
    public const string Print = """<path d="M5 6.5V2h8v4.5M5 13H2.5V6.5h13V13H13M5 11h8v5H5z"/>""";
    public const string EmptyVessel = """<path d="M4 2.5v10.5a3 3 0 0 0 3 3h4a3 3 0 0 0 3-3V2.5"/><path d="M6.5 9h5" stroke-dasharray="1.5 2"/>""";
    public const string Reverse = """<path d="M3 7h8a4 4 0 0 1 0 8H7M6 4 3 7l3 3"/>""";
    public const string Out = """<path d="M3 9h12M10.5 4.5 15 9l-4.5 4.5"/>""";
    public const string Book = """<path d="M3 3.2c2-.9 4.3-.7 6 .8 1.7-1.5 4-1.7 6-.8v11c-2-.9-4.3-.7-6 .8-1.7-1.5-4-1.7-6-.8ZM9 4v11"/>""";
    public const string Shelf = """<path d="M2.5 1.8v14.4M15.5 1.8v14.4M2.5 8h13M2.5 15h13M5 8V4.5h3V8M11 15v-3.5h2.5"/>""";
    public const string People = """<circle cx="6.5" cy="6" r="2.8"/><path d="M1.8 15.5c.2-3 2-4.8 4.7-4.8s4.5 1.8 4.7 4.8M11.5 3.6a2.6 2.6 0 0 1 .3 4.9M13.2 11.2c1.7.6 2.8 2.1 3 4.3"/>""";
    public const string Tag = """<path d="M2 2h6.5L16 9.5 9.5 16 2 8.5Z"/><path d="M5.5 5.5v.1"/>""";
    public const string Bin = """<path d="M3 4.8h12M7 4.5V2.5h4v2M4.5 4.8l.8 11.2h7.4l.8-11.2M7.5 8v5M10.5 8v5"/>""";
    public const string Search = """<circle cx="8" cy="8" r="5.2"/><path d="m12 12 4 4"/>""";
    public const string Paper = """<path d="M4 1.8h7l3.5 3.5v11H4ZM10.8 2v3.6h3.6M6.5 9h5M6.5 12h5"/>""";
}
