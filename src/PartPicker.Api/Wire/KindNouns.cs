using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>What a kind of part is called in a sentence.</summary>
internal static class KindNouns
{
    public static string Of(Type part) => part.Name switch
    {
        nameof(DriveSpring) => "drive spring",
        nameof(Flyweight) => "flyweight",
        nameof(DrivenSpring) => "driven spring",
        nameof(Helix) => "helix",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Not a kind of part."),
    };
}
