using MakerStudio.Core.Hazards;
using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Labels.Layout;

/// <param name="Over">By how many mm the words run over the foot; 0 or less where they fit.</param>
/// <param name="TooWide">By how many mm the widest line runs over the edge.</param>
internal sealed record Composed(LabelDrawing Drawing, double Over, double TooWide);

/// <summary>
/// Composes one label at given sizes: head, pictograms, words, and at the foot maker, batch and square code. What does
/// not fit runs over, so that the caller can see by how much.
/// </summary>
/// <param name="height">Of the label, mm; may be more than the stock's to find out how much the words need.</param>
internal sealed class LabelComposer(LabelContent content, LabelStock stock, LabelMinimums minimums, CodeModules? code, LabelSetting setting, double height)
{
    /// <summary>White around everything, mm: a twenty-fifth of the short side within these bounds. Own choice.</summary>
    private const double LeastMargin = 1.5;
    private const double MostMargin = 3;
    private const double MarginPart = 0.04;

    /// <summary>Over the letter's size. Own choices.</summary>
    private const double ParagraphGap = 0.3;
    private const double LargestName = 3.4;
    private const double LeanName = 2.2;
    private const double SmallestName = 1.4;
    private const double LargestSignal = 1.5;
    private const double LeanSignal = 1.2;

    /// <summary>Between pictograms, and between them and words, mm.</summary>
    private const double PictogramGap = 0.8;

    private readonly List<DrawnPicture> _pictures = [];
    private readonly List<DrawnRule> _rules = [];
    private DrawnCode? _code;

    private readonly double _letter = setting.Letter;

    private double Gap => ParagraphGap * _letter;

    private bool IsUs => content.Facts.IsUnitedStates;

    private double NetSize => Math.Max(minimums.Net / LabelFace.Bold.FigureHeight, _letter);

    public Composed Compose()
    {
        Box inner = Inner((double)stock.Width, height);
        List<DrawnText> foot = Foot(inner, out double footTop);
        var flow = new TextFlow(inner);
        if (_code is not null)
        {
            flow.Avoid(_code.Box with { Left = _code.Box.Left - (CodeModules.Quiet * _code.Module), Top = _code.Box.Top - (CodeModules.Quiet * _code.Module) });
        }

        Head(flow);
        Hazards(flow);
        Body(flow);
        List<DrawnText> texts = [.. flow.Texts, .. foot];
        double over = flow.Top - footTop;
        double tooWide = texts.Max(text => text.Left + text.Width) - inner.Right;
        return new(new((double)stock.Width, height, texts, _pictures, _rules, _code), over, tooWide);
    }

    private static Box Inner(double width, double height)
    {
        double margin = Math.Clamp(Math.Min(width, height) * MarginPart, LeastMargin, MostMargin);
        return new(margin, margin, width - (2 * margin), height - (2 * margin));
    }

    private IReadOnlyList<LabelText> Texts(string key) =>
        setting.HasCodes ? content.TextsOf(key) : [.. content.TextsOf(key).Select(text => text.WithoutCodes())];

    /// <summary>Maker and kind small, below them the scent's name and, in Europe, the net quantity.</summary>
    private void Head(TextFlow flow)
    {
        IReadOnlyList<LabelText> name = Texts("name");
        LabelText maker = LabelText.Of(content.Facts.Maker.Name, isBold: true);
        LabelText kind = name[^1];
        LabelFace kindFace = IsUs ? LabelFace.Bold : LabelFace.Regular;
        double kindWidth = kindFace.WidthOf(kind.ToString(), _letter);
        bool sideBySide = LabelFace.Bold.WidthOf(maker.ToString(), _letter) + kindWidth + _letter <= flow.Frame.Width;
        double firstLine = flow.Top;
        flow.Paragraph(maker, _letter, DrawnRole.Text);
        if (sideBySide)
        {
            flow.Add(new(kind.ToString(), kindFace, _letter, flow.Frame.Right - kindWidth, firstLine + (_letter * 0.95), DrawnRole.Text));
        }

        NameAndNet(flow, name[0], IsUs ? null : Texts("net-quantity")[0].ToString());
        if (!sideBySide)
        {
            flow.Paragraph(kind, _letter, DrawnRole.Text);
        }

        const double hairline = 0.2;
        flow.Top += Gap;
        _rules.Add(new(flow.Frame.Left, flow.Top, flow.Frame.Right, hairline));
        flow.Top += Gap + hairline;
    }

    private void NameAndNet(TextFlow flow, LabelText name, string? net)
    {
        double netWidth = net is null ? 0 : LabelFace.Bold.WidthOf(net, NetSize) + _letter;
        double room = flow.Frame.Width - netWidth;
        double atOne = LabelFace.Scent.WidthOf(name.ToString(), 1);
        double largest = (setting.IsLean ? LeanName : LargestName) * _letter;
        double size = Math.Min(largest, room / atOne);
        bool isBeside = size >= SmallestName * _letter;
        size = isBeside ? size : Math.Clamp(flow.Frame.Width / atOne, SmallestName * _letter, largest);
        double above = flow.Top;
        flow.Paragraph(name, size, DrawnRole.ScentName, LabelFace.Scent);
        if (net is null)
        {
            return;
        }

        double baseline = isBeside ? above + (0.95 * size) : flow.Top + (0.95 * NetSize);
        double left = isBeside ? flow.Frame.Right - netWidth + _letter : flow.Frame.Left;
        flow.Add(new(net, LabelFace.Bold, NetSize, left, baseline, DrawnRole.NetQuantity));
        flow.Top = isBeside ? Math.Max(flow.Top, baseline + (0.25 * NetSize)) : flow.Top + (TextFlow.LineSpacing * NetSize);
    }

    /// <summary>Pictograms at the left; the signal word beside them where it fits, and words after it where there is room.</summary>
    private void Hazards(TextFlow flow)
    {
        double top = flow.Top;
        double field = setting.PictogramSide * PictogramShapes.FieldPerSide;
        IReadOnlyList<Pictogram> shown = content["pictograms"].Pictograms;
        int aRow = Math.Max(1, (int)((flow.Frame.Width + PictogramGap) / (field + PictogramGap)));
        for (int i = 0; i < shown.Count; i++)
        {
            var box = new Box(flow.Frame.Left + (i % aRow * (field + PictogramGap)), top + (i / aRow * (field + PictogramGap)), field, field);
            _pictures.Add(new(PictogramShapes.Of(shown[i]), box, DrawnRole.Pictogram, shown[i]));
            flow.Avoid(box with { Width = field + (PictogramGap * 2), Height = field + (PictogramGap / 2) });
        }

        foreach (LabelText word in Texts("signal-word"))
        {
            SignalWord(flow, word, field);
        }

        double size = IsUs ? Math.Max(_letter, minimums.Hazard / LabelFace.Bold.CapitalHeight) : _letter;
        Paragraph(flow, size, DrawnRole.Hazard, "hazard-statements", "supplemental", "substances");
    }

    private void SignalWord(TextFlow flow, LabelText word, double field)
    {
        double size = Math.Max((setting.IsLean ? LeanSignal : LargestSignal) * _letter, minimums.Signal / LabelFace.Bold.CapitalHeight);
        double width = LabelFace.Bold.WidthOf(word.ToString(), size);
        double beside = flow.WidthOfNext(size);
        bool isAlone = beside < flow.Frame.Width && beside >= width && beside < width * 2.2;
        if (isAlone)
        {
            // Too narrow for words after it: the signal word stands at the middle of the pictograms.
            double middle = flow.Top + (field / 2) + (LabelFace.Bold.CapitalHeight * size / 2);
            flow.Add(new(word.ToString(), LabelFace.Bold, size, flow.Frame.Right - beside, middle, DrawnRole.SignalWord));
            flow.Top += field + (PictogramGap / 2);
            return;
        }

        flow.Paragraph(word, size, DrawnRole.SignalWord, LabelFace.Bold, width);
    }

    private void Body(TextFlow flow)
    {
        Paragraph(flow, _letter, DrawnRole.Text, "precautions");
        if (content["cautions"].HasSafetyAlert)
        {
            double mark = _letter * 1.3;
            double beside = flow.Frame.Left;
            _pictures.Add(new(PictogramShapes.SafetyAlert, new(beside, flow.Top - (_letter * 0.1), mark, mark), DrawnRole.Mark));
            flow.Avoid(new(beside, flow.Top, mark + (_letter * 0.4), _letter));
        }

        Paragraph(flow, _letter, DrawnRole.Text, "cautions", "allergens");
        foreach (LabelText line in Texts("own-lines"))
        {
            flow.Paragraph(line, _letter, DrawnRole.Text);
        }
    }

    /// <summary>Elements that read on, in one paragraph.</summary>
    private void Paragraph(TextFlow flow, double size, DrawnRole role, params string[] keys)
    {
        List<LabelText> texts = [.. keys.SelectMany(Texts)];
        if (texts.Count > 0)
        {
            flow.Paragraph(Joined(texts), size, role);
            flow.Top += Gap;
        }
    }

    private static LabelText Joined(IReadOnlyList<LabelText> texts) =>
        new([.. texts.SelectMany((text, index) => index == 0 ? text.Runs : [new LabelRun(" "), .. text.Runs])]);

    /// <summary>Set from its own top, then moved down to the foot of the label.</summary>
    private List<DrawnText> Foot(Box inner, out double top)
    {
        _code = Code(inner);
        double width = _code is null ? inner.Width : _code.Box.Left - (CodeModules.Quiet * _code.Module) - inner.Left;
        var flow = new TextFlow(inner with { Width = width });
        if (IsUs)
        {
            flow.Paragraph(Texts("net-quantity")[0], NetSize, DrawnRole.NetQuantity);
        }

        foreach (LabelText line in FootLines())
        {
            flow.Paragraph(line, _letter, DrawnRole.Text);
        }

        double down = inner.Bottom - flow.Top;
        top = inner.Top + down;
        return [.. flow.Texts.Select(text => text with { Baseline = text.Baseline + down })];
    }

    private IEnumerable<LabelText> FootLines()
    {
        IReadOnlyList<LabelText> maker = Texts("maker");
        if (maker.Count > 1)
        {
            yield return LabelText.Of(string.Join(", ", maker.Skip(1).Select(line => line.ToString())));
        }

        foreach (LabelText ufi in Texts("ufi"))
        {
            yield return ufi;
        }

        List<LabelText> batch = [.. Texts("batch"), .. Texts("best-before")];
        if (batch.Count > 0)
        {
            yield return Joined(batch);
        }
    }

    /// <summary>The square code in the lower right corner, as large as suits the label; null where there is no room to read it.</summary>
    private DrawnCode? Code(Box inner)
    {
        if (code is null || LabelLegibility.ModuleFor(code, inner, setting.IsLean) is not { } module)
        {
            return null;
        }

        double width = code.Side * module;
        var box = new Box(inner.Right - width, inner.Bottom - width, width, width);
        var dark = new List<Box>();
        for (int row = 0; row < code.Side; row++)
        {
            for (int column = 0; column < code.Side; column++)
            {
                int from = column;
                while (column < code.Side && code.IsDark(row, column))
                {
                    column++;
                }

                if (column > from)
                {
                    dark.Add(new(box.Left + (from * module), box.Top + (row * module), (column - from) * module, module));
                }
            }
        }

        return new(dark, box, module);
    }
}
