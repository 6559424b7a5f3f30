using MakerStudio.Core.Labels;
using QRCoder;

namespace MakerStudio.Services.Labels;

/// <summary>Turns an address into the squares of a QR code.</summary>
public static class SquareCodes
{
    /// <summary>A label is scratched and bent: level M mends 15 % of the code.</summary>
    private const QRCodeGenerator.ECCLevel Mending = QRCodeGenerator.ECCLevel.M;

    public static CodeModules Of(string address)
    {
        using QRCodeData data = QRCodeGenerator.GenerateQrCode(address, Mending);
        var rows = data.ModuleMatrix;
        return new([.. rows.Skip(CodeModules.Quiet).Take(rows.Count - (2 * CodeModules.Quiet)).Select(row =>
            (IReadOnlyList<bool>)[.. Enumerable.Range(CodeModules.Quiet, row.Count - (2 * CodeModules.Quiet)).Select(column => row[column])])]);
    }
}
