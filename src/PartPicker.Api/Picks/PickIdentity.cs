using System.Security.Cryptography;
using System.Text;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Picks;

/// <summary>What makes two picks the same: whatever could change a byte of the answer.</summary>
/// <param name="Request">The request as understood.</param>
/// <param name="Units">The system that quantities are written in.</param>
/// <param name="Precision">Rounded or in full.</param>
/// <param name="CatalogRevision">The catalog that is searched.</param>
/// <param name="ModelVersion">Model and order.</param>
/// <param name="Form">The members that the answer has: a program that adds one does not send what is stored without it.</param>
internal sealed record PickIdentity(
    PickRequestWire Request, string Units, string Precision, string CatalogRevision, string ModelVersion, string Form)
{
    private static readonly string FormOfToday = Hash(Encoding.UTF8.GetBytes(WireForm.Of(typeof(PickAnswerWire))));

    public static PickIdentity Of(PickRequest request, AnswerFormat format, string catalogRevision) => new(
        RequestWriter.Write(request), format.UnitsWord, format.PrecisionWord, catalogRevision,
        PartSelection.ModelVersion, FormOfToday);

    /// <summary>The id that stands for it.</summary>
    public string ToId() => Hash(WireJson.Bytes(this));

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
