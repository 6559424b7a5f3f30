namespace MakerStudio.Core.Labels.Rules;

/// <summary>Statements one behind the other, their codes in bold.</summary>
internal static class CodedParagraph
{
    public static LabelText Of(IEnumerable<CodedText> statements)
    {
        var runs = new List<LabelRun>();
        foreach (CodedText each in statements)
        {
            if (runs.Count > 0)
            {
                runs.Add(new(" "));
            }

            if (each.Code.Length > 0)
            {
                runs.Add(new($"{each.Code} ", IsBold: true, IsCode: true));
            }

            runs.Add(new(each.Text));
        }

        return new(runs);
    }
}
