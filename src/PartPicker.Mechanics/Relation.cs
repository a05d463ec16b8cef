namespace PartPicker.Mechanics;

/// <summary>One relation of the model by name, as an explanation cites it.</summary>
/// <param name="Name">Stable name; it stands on the page.</param>
/// <param name="Equation">The equation in plain characters; the symbols are explained on the page.</param>
/// <param name="Source">Key of docs/sources.md; null where it is derived, or common practice without a source.</param>
/// <param name="Page">Page of docs/model that explains it, without its ending.</param>
public sealed record Relation(string Name, string Equation, string? Source, string Page);

/// <summary>The relations that an explanation cites, by the page that explains them.</summary>
public static class Relations
{
    private static readonly List<Relation> Listed = [];

    public static readonly Relation ShimStack = Springs("shim-stack", "s = N_s t");
    public static readonly Relation DriveSpringLength = Springs("drive-spring-length", "l = l₁ − s − x");
    public static readonly Relation SpringForce = Springs("spring-force", "F = k max(0, L₀ − l)");
    public static readonly Relation SpringBetweenLoads = Springs(
        "spring-between-loads", "F = max(0, F_a + (F_b − F_a)(l − l_a)/(l_b − l_a))");
    public static readonly Relation RateOfOneLoad = Springs("rate-of-one-load", "k = F_a/(L₀ − l_a)");
    public static readonly Relation SpringRate = Springs("spring-rate", "k = G d⁴/(8 D³ Nₐ)", "SHI");
    public static readonly Relation TwistRate = Springs("twist-rate", "κ = E d⁴/(64 D Nₐ)", "SHI");
    public static readonly Relation ShearModulus = Springs("shear-modulus", "G = G(d) of the material", "SHI");
    public static readonly Relation ElasticModulus = Springs("elastic-modulus", "E = E(d) of the material", "SHI");
    public static readonly Relation MeanDiameter = Springs("mean-diameter", "D = D_e − d");

    public static readonly Relation ThrustPerSpeedSquared = Flyweights("thrust-per-speed-squared", "W = z Σ m r r′", "KG");
    public static readonly Relation FlyweightThrust = Flyweights("flyweight-thrust", "F_fly = a_f ω² W", "KG");
    public static readonly Relation RadiusCurve = Flyweights("radius-curve", "r = r(x) by the points of its curve", "FRI");
    public static readonly Relation RadiusSlope = Flyweights("radius-slope", "r′ = dr/dx of the same curve", "FRI");

    public static readonly Relation Engagement = Start("engagement", "ω_e² = F₁(x)/((1 − f) a_f W(x)), greatest up to contact");
    public static readonly Relation LockUp = Start("lock-up", "(1 − f) F_fly − F₁ = a_b F_g");
    public static readonly Relation GripThrust = Start("grip-thrust", "F_g = D/(2 μ_e1 tan β)", "KG");

    public static readonly Relation TravelAtRatio = Path("travel-at-ratio", "R₂(x)/R₁(x) = i");
    public static readonly Relation EvenlyByRatio = Path("evenly-by-ratio", "i = i_c + (j − 1)(i_f − i_c)/(K − 1)");
    public static readonly Relation DriveRadius = Path("drive-radius", "R₁ = R₁min + (x − x_c)/(2 tan β)");
    public static readonly Relation OpenBeltLength = Path(
        "open-belt-length", "L = 2C cos γ + π(R₁ + R₂) + 2γ(R₂ − R₁), sin γ = (R₂ − R₁)/C", "KG");
    public static readonly Relation DriveWrap = Path("drive-wrap", "θ₁ = π − 2γ, sin γ = (R₂ − R₁)/C", "KG");
    public static readonly Relation DrivenWrap = Path("driven-wrap", "θ₂ = π + 2γ, sin γ = (R₂ − R₁)/C", "KG");
    public static readonly Relation OpeningTravel = Path("opening-travel", "y = (R₂max − R₂) 2 tan β");
    public static readonly Relation Ratio = Path("ratio", "i = R₂/R₁", "KG");

    public static readonly Relation DrivenClamp = Driven("driven-clamp", "F_s = F₂ + (τ + q η i Q)/(r_c tan(α − φ))", "KG");
    public static readonly Relation DrivenSpringLength = Driven("driven-spring-length", "l = l₂ − y");
    public static readonly Relation StiffenedForce = Driven("stiffened-force", "F₂ = (1 + θ/(2π Nₐ))² F");
    public static readonly Relation TwistTorque = Driven("twist-torque", "τ = κ max(0, θ)");
    public static readonly Relation TorqueBetweenTwists = Driven(
        "torque-between-twists", "τ = τ_a + (τ_b − τ_a)(max(0, θ) − θ_a)/(θ_b − θ_a)");
    public static readonly Relation Twist = Driven("twist", "θ = ψ₀ + Θ");
    public static readonly Relation PreloadTwist = Driven("preload-twist", "ψ₀ = ψ_h + ψ_l");
    public static readonly Relation HelixAngle = Driven("helix-angle", "α = α(y), straight lines between its points");
    public static readonly Relation CamTurn = Driven("cam-turn", "Θ = ∫ dy/(r_c tan α) from 0 to y");

    public static readonly Relation EffectiveTension = Thrust("effective-tension", "D = Q/R₁", "KG");
    public static readonly Relation GrooveFriction = Thrust("groove-friction", "μ_e = μ/sin β", "KG");
    public static readonly Relation FrictionByRadius = Thrust("friction-by-radius", "μ = μ(R), straight lines between its points");
    public static readonly Relation BeltTension = Thrust(
        "belt-tension", "2 tan β max(0, F_s) = T₂′(θ₂ − θ_a2) + D/μ_e2, θ_a2 = ln(1 + D/T₂′)/μ_e2", "KG");
    public static readonly Relation SlippingTension = Thrust("slipping-tension", "T₂′ = D/(e^(μ_e2 θ₂) − 1)", "KG");
    public static readonly Relation TightTension = Thrust("tight-tension", "T₁′ = T₂′ + D", "KG");
    public static readonly Relation ActiveArc = Thrust("active-arc", "θ_a = ln(T₁′/T₂′)/μ_e", "KG");
    public static readonly Relation DriveThrust = Thrust(
        "drive-thrust", "F_d = (T₁′ max(0, θ₁ − θ_a1) + D/μ_e1)/(2 tan β)", "KG");
    public static readonly Relation LockedThrust = Thrust("locked-thrust", "F_d = T₁′ θ₁/(2 tan β)", "KG");
    public static readonly Relation SlipMargin = Thrust("slip-margin", "least of θ₁/θ_a1 and θ₂/θ_a2", "KG");
    public static readonly Relation SlippingMargin = Thrust(
        "slipping-margin", "2 tan β max(0, F_s) μ_e2/D × least of θ₁/θ_a1 and θ₂/θ_a2");

    public static readonly Relation EngineTorque = Engine("engine-torque", "Q = λ Q₀(n)");
    public static readonly Relation TorqueCurve = Engine("torque-curve", "Q₀ = Q₀(n) by the points of its curve", "FRI");
    public static readonly Relation TwoPeaks = Engine(
        "two-peaks", "Q₀ = Q_M − (Q_M − Q_P)((n − n_T)/(n_P − n_T))^p between the peaks");
    public static readonly Relation TorqueFactor = Engine("torque-factor", "λ = cf(sea level)/cf(here)");
    public static readonly Relation BoostedTorqueFactor = Engine(
        "boosted-torque-factor", "λ = 1 up to H_b, min(1, g(H)/g(H_b)) above");
    public static readonly Relation CorrectionSaeJ1349 = Engine(
        "correction-sae-j1349", "cf = 1.180 (99 000 Pa/p) √(T/298 K) − 0.18", "SAE J1349");
    public static readonly Relation CorrectionIso1585 = Engine(
        "correction-iso-1585", "cf = (99 000 Pa/p)^1.2 (T/298 K)^0.6", "ISO 1585");
    public static readonly Relation StandardPressure = Engine(
        "standard-pressure", "p = 101 325 Pa (1 − 0.0065 K/m H/288.15 K)^5.25588", "ISO 2533");
    public static readonly Relation StandardTemperature = Engine(
        "standard-temperature", "T = 288.15 K − 0.0065 K/m H", "ISO 2533");
    public static readonly Relation SameDayTemperature = Engine(
        "same-day-temperature", "T_b = T_std(H_b) + T − T_std(H)");
    public static readonly Relation DryPressure = Add("dry-pressure", "p_d = p − h e(T)", "SAE J1349", "moist-air");
    public static readonly Relation SaturationPressure = Add(
        "saturation-pressure", "ln e = −6096.9385/T + 21.2409642 − 0.02711193 T + 1.673952·10⁻⁵ T² + 2.433502 ln T", "SON",
        "moist-air");
    public static readonly Relation Power = Engine("power", "P = Q ω");
    public static readonly Relation PeakPower = Engine("peak-power", "P_max = λ P₀, greatest P₀ = Q₀ ω up to the rev limit");
    public static readonly Relation PowerLost = Engine("power-lost", "ΔP = P_max − P");

    public static readonly Relation Balance = Shift("balance", "(1 − f) F_fly − F₁ = a_b F_d");
    public static readonly Relation ShiftsAtEngagement = Shift(
        "shifts-at-engagement", "(1 − f) F_fly − F₁ ≥ a_b F_d already at ω_e");
    public static readonly Relation VehicleSpeed = Shift("vehicle-speed", "v = ω R_t/(i u)");

    public static readonly Relation FlyweightFactor = Anchoring("flyweight-factor", "a_f = (n_e/n_e,measured)²");
    public static readonly Relation ThrustFactor = Anchoring("thrust-factor", "a_b = Σ b F_d/Σ F_d²");
    public static readonly Relation ThrustLeft = Anchoring("thrust-left", "b = (1 − f) F_fly − F₁");
    public static readonly Relation AnchoredThrust = Anchoring("anchored-thrust", "a_b F_d");

    /// <summary>Every relation, each once.</summary>
    public static IReadOnlyList<Relation> All => Listed;

    private static Relation Springs(string name, string equation, string? source = null) =>
        Add(name, equation, source, "springs");

    private static Relation Flyweights(string name, string equation, string? source = null) =>
        Add(name, equation, source, "flyweights");

    private static Relation Start(string name, string equation, string? source = null) =>
        Add(name, equation, source, "engagement");

    private static Relation Path(string name, string equation, string? source = null) =>
        Add(name, equation, source, "belt-path");

    private static Relation Driven(string name, string equation, string? source = null) =>
        Add(name, equation, source, "driven-clamp");

    private static Relation Thrust(string name, string equation, string? source = null) =>
        Add(name, equation, source, "belt-thrust");

    private static Relation Engine(string name, string equation, string? source = null) =>
        Add(name, equation, source, "engine-and-air");

    private static Relation Shift(string name, string equation, string? source = null) =>
        Add(name, equation, source, "shift-curve");

    private static Relation Anchoring(string name, string equation, string? source = null) =>
        Add(name, equation, source, "anchoring");

    private static Relation Add(string name, string equation, string? source, string page)
    {
        var relation = new Relation(name, equation, source, page);
        Listed.Add(relation);
        return relation;
    }
}
