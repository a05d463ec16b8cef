namespace PartPicker.Mechanics;

/// <summary>One relation of the model by name, as an explanation cites it.</summary>
/// <param name="Name">Stable name; it stands on the page.</param>
/// <param name="Equation">The equation in plain characters; the symbols are explained on the page.</param>
/// <param name="Source">Key of docs/sources.md; null where it is derived, or an input of the computation read off a curve.</param>
/// <param name="Page">File of docs/model that explains it.</param>
public sealed record Relation(string Name, string Equation, string? Source, string Page);

/// <summary>The relations that an explanation cites.</summary>
public static class Relations
{
    public static readonly Relation SpringForce = new("spring-force", "F₁ = F(l₁ − s − x)", null, "springs.md");
    public static readonly Relation Engagement = new(
        "engagement", "ω_e² = F₁(x)/((1 − f) a_f W(x)), greatest up to contact", null, "engagement.md");
    public static readonly Relation FlyweightThrust = new("flyweight-thrust", "F_fly = a_f ω² W", "KG", "engagement.md");
    public static readonly Relation ThrustPerSpeedSquared = new(
        "thrust-per-speed-squared", "W = z Σ m r r′", "KG", "engagement.md");
    public static readonly Relation DrivenClamp = new(
        "driven-clamp", "F_s = F₂ + (τ + q η i Q)/(r_c tan(α − φ))", "KG", "driven-clamp.md");
    public static readonly Relation DrivenSpringForce = new(
        "driven-spring-force", "F₂ = F(l₂ − y), stiffened by (1 + θ/Nₐ)² where the machine says so", null, "driven-clamp.md");
    public static readonly Relation TwistTorque = new("twist-torque", "τ = τ(ψ₀ + Θ)", null, "driven-clamp.md");
    public static readonly Relation EffectiveTension = new("effective-tension", "D = Q/R₁", "KG", "belt-thrust.md");
    public static readonly Relation GrooveFriction = new("groove-friction", "μ_e = μ/sin β", "KG", "belt-thrust.md");
    public static readonly Relation BeltTension = new(
        "belt-tension", "2 tan β F_s = T₂′(θ₂ − θ_a2) + D/μ_e2, T₁′ = T₂′ + D", "KG", "belt-thrust.md");
    public static readonly Relation SlippingTension = new(
        "slipping-tension", "T₂′ = D/(e^(μ_e2 θ₂) − 1), T₁′ = T₂′ + D", "KG", "belt-thrust.md");
    public static readonly Relation ActiveArc = new("active-arc", "θ_a1 = ln(T₁′/T₂′)/μ_e1", "KG", "belt-thrust.md");
    public static readonly Relation DriveThrust = new(
        "drive-thrust", "F_d = (T₁′ max(0, θ₁ − θ_a1) + D/μ_e1)/(2 tan β)", "KG", "belt-thrust.md");
    public static readonly Relation LockedThrust = new("locked-thrust", "F_d = T₁′ θ₁/(2 tan β)", "KG", "belt-thrust.md");
    public static readonly Relation Balance = new(
        "balance", "(1 − f) F_fly − F₁ = a_b F_d", null, "shift-curve.md");
    public static readonly Relation ShiftsAtEngagement = new(
        "shifts-at-engagement", "(1 − f) F_fly − F₁ ≥ a_b F_d already at ω_e", null, "shift-curve.md");
    public static readonly Relation EngineTorque = new("engine-torque", "Q = κ Q₀(n)", "FRI", "shift-curve.md");

    /// <summary>Every relation, each once.</summary>
    public static readonly IReadOnlyList<Relation> All =
    [
        SpringForce, Engagement, FlyweightThrust, ThrustPerSpeedSquared, DrivenClamp, DrivenSpringForce, TwistTorque,
        EffectiveTension, GrooveFriction, BeltTension, SlippingTension, ActiveArc, DriveThrust, LockedThrust, Balance,
        ShiftsAtEngagement, EngineTorque,
    ];
}
