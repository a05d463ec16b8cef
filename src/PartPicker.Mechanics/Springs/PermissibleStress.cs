namespace PartPicker.Mechanics;

/// <summary>What was done to the wire, as far as its permissible stress goes.</summary>
public enum WireTreatment
{
    /// <summary>Music wire and cold-drawn carbon steel.</summary>
    Drawn,

    /// <summary>Hardened and tempered carbon and low-alloy steel.</summary>
    Tempered,

    /// <summary>Austenitic stainless steel.</summary>
    Austenitic,
}

/// <summary>Share of the tensile strength that a static stress may reach.</summary>
public static class PermissibleStress
{
    /// <summary>Share at solid by [EN 13906-1] for cold-coiled springs, of the uncorrected shear stress.</summary>
    public const double ShearShareAtSolid = 0.56;

    /// <summary>Share that the shear stress of <see cref="FactorFor"/> may reach.</summary>
    /// <param name="treatment">Of the wire.</param>
    /// <param name="setRemoved">True where the spring was pressed solid in the making until it set no more.</param>
    /// <remarks>The lower end of what the table allows after set removal. Source: [SHI] Table 10-6.</remarks>
    public static double ShearShare(WireTreatment treatment, bool setRemoved) => treatment switch
    {
        WireTreatment.Drawn => setRemoved ? 0.60 : 0.45,
        WireTreatment.Tempered => setRemoved ? 0.65 : 0.50,
        WireTreatment.Austenitic => setRemoved ? 0.55 : 0.35,
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, "No such treatment."),
    };

    /// <summary>The factor that goes with that share: set removal takes the effect of curvature away.</summary>
    /// <remarks>Source: [SHI] Table 10-6.</remarks>
    public static ShearFactor FactorFor(bool setRemoved) => setRemoved ? ShearFactor.Direct : ShearFactor.Bergstraesser;

    /// <summary>Share that a bending stress with K_i, or a combined stress, may reach.</summary>
    /// <remarks>0.45, 0.50 and 0.35 over 1/√3. Source: [SHI] ch. 10: 0.78 seen, the others from memory.</remarks>
    public static double BendingShare(WireTreatment treatment) => treatment switch
    {
        WireTreatment.Drawn => 0.78,
        WireTreatment.Tempered => 0.87,
        WireTreatment.Austenitic => 0.61,
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, "No such treatment."),
    };
}
