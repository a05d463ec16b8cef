using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>Which side of its limit a measured length must lie on.</summary>
internal enum Side
{
    AtLeast,
    AtMost,
    Same,

    /// <summary>Above the limit by more than the tolerance.</summary>
    Above,
}

/// <summary>A fit rule that compares a length of a part with a length of the machine.</summary>
/// <param name="Name">Stable name of the rule, and where it compares twice, which end.</param>
/// <param name="Side">Where the part must lie.</param>
/// <param name="LimitMm">The machine's length on the bench.</param>
/// <param name="Part">The bench with that length of the part, all else fitting.</param>
/// <param name="Machine">The bench with that length of the machine; null where it is made of several.</param>
internal sealed record LengthRule(
    string Name, Side Side, double LimitMm, Func<Bench, Length, Bench> Part, Func<Bench, Length, Bench>? Machine)
{
    /// <summary>Opening travel at full shift of the bench's belt, mm: asserted against the model where it is used.</summary>
    public static readonly double OpeningMm = new Bench().Model().FullShift.OpeningTravel * 1000;

    public static readonly IReadOnlyList<LengthRule> All =
    [
        new("drive-spring-free-length", Side.Above, 72,
            (b, l) => b with { DriveSpring = b.DriveSpring with { FreeLength = l } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { SpringLength = l } }),
        new("drive-spring-measured-range", Side.AtMost, 72 - 24.5,
            (b, l) => b with { DriveSpring = b.DriveSpring with { LoadTable = Curve((l.Meters, 900), (0.08, 200)) } },
            null),
        new("drive-spring-measured-range/end", Side.AtLeast, 72,
            (b, l) => b with { DriveSpring = b.DriveSpring with { LoadTable = Curve((0.04, 1000), (l.Meters, 400)) } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { SpringLength = l } }),
        new("drive-spring-solid-length", Side.AtMost, 72 - 24.5,
            (b, l) => b with { DriveSpring = b.DriveSpring with { SolidLength = l, ActiveCoils = null } },
            null),
        new("drive-spring-outside-diameter", Side.AtMost, 62,
            (b, l) => b with { DriveSpring = b.DriveSpring with { OutsideDiameter = l, ActiveCoils = null } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { CupBore = l } }),
        new("drive-spring-inside-diameter", Side.AtLeast, 38,
            (b, l) => b with { DriveSpring = b.DriveSpring with { OutsideDiameter = l + 2 * Mm(5.4) } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { PostDiameter = l } }),
        new("flyweight-travel", Side.AtMost, 0,
            (b, l) => b with { Flyweight = b.Flyweight with { TipCurve = Curve((l.Meters, 0.044), (0.028, 0.086)) } },
            null),
        new("flyweight-travel/end", Side.AtLeast, 24.5,
            (b, l) => b with { Flyweight = b.Flyweight with { TipCurve = Curve((0, 0.044), (l.Meters, 0.086)) } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { FullShiftTravel = l } }),
        new("flyweight-arm-length", Side.Same, 58,
            (b, l) => b with { Flyweight = b.Flyweight with { ArmLength = l } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { ArmLength = l } }),
        new("flyweight-pin-bore", Side.Same, 10,
            (b, l) => b with { Flyweight = b.Flyweight with { PinBore = l } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { PinDiameter = l } }),
        new("flyweight-tip-clearance", Side.AtMost, 100,
            (b, l) => b with { Flyweight = b.Flyweight with { TipRadius = l } },
            (b, l) => b with { DriveClutch = b.DriveClutch with { TipClearanceRadius = l } }),
        new("flyweight-roller-diameter", Side.Same, 20,
            (b, l) => b with
            {
                Flyweight = b.Flyweight with { RollerDiameter = l },
                DriveClutch = b.DriveClutch with
                {
                    Family = DriveFamily.SlidingRoller, RollerDiameter = b.DriveClutch.RollerDiameter ?? Mm(20),
                },
            },
            (b, l) => b with { DriveClutch = b.DriveClutch with { RollerDiameter = l } }),
        new("driven-spring-solid-length", Side.AtMost, 60 - OpeningMm,
            (b, l) => b with { DrivenSpring = b.DrivenSpring with { SolidLength = l - WoundCoils(b) } },
            null),
        new("helix-travel", Side.AtMost, 0,
            (b, l) => b with { Helix = Points(b, (l.Meters, 0.75), (0.03, 0.65)) },
            null),
        new("helix-travel/end", Side.AtLeast, OpeningMm,
            (b, l) => b with { Helix = Points(b, (0, 0.75), (l.Meters, 0.65)) },
            null),
        new("helix-cam-radius", Side.Same, 42,
            (b, l) => b with { Helix = b.Helix with { CamRadius = l } },
            (b, l) => b with { DrivenClutch = b.DrivenClutch with { CamRadius = l } }),
        new("driven-spring-free-length", Side.AtLeast, 60,
            (b, l) => b with { DrivenSpring = b.DrivenSpring with { FreeLength = l } },
            (b, l) => b with { DrivenClutch = b.DrivenClutch with { SpringLength = l } }),
        new("driven-spring-free-length/table", Side.AtLeast, 60,
            (b, l) => b with { DrivenSpring = b.DrivenSpring with { LoadTable = Curve((0.01, 700), (l.Meters, 360)) } },
            (b, l) => b with { DrivenClutch = b.DrivenClutch with { SpringLength = l } }),
        new("driven-spring-measured-range", Side.AtMost, 60 - OpeningMm,
            (b, l) => b with { DrivenSpring = b.DrivenSpring with { LoadTable = Curve((l.Meters, 600), (0.08, 200)) } },
            null),
        new("driven-spring-inside-diameter", Side.AtLeast, 44,
            (b, l) => b with { DrivenSpring = b.DrivenSpring with { InsideDiameter = l } },
            (b, l) => b with { DrivenClutch = b.DrivenClutch with { HubDiameter = l } }),
    ];

    // What the twist of hole 2 and of the cam adds to the body: one wire for each turn.
    private static Length WoundCoils(Bench bench)
    {
        double cam = HelixRules.Cam(bench.Helix, bench.Model()).Turn(OpeningMm / 1000);
        return bench.DrivenSpring.WireDiameter!.Value * ((70 * Math.PI / 180 + cam) / (2 * Math.PI));
    }

    public string Rule => Name.Split('/')[0];

    public FitCheck Check(Bench bench) => FitRules.Check(Rule, bench);

    private static Helix Points(Bench bench, params (double, double)[] points) =>
        bench.Helix with { HelixDeg = null, FinishDeg = null, FinishTravel = null, AnglePoints = Curve(points) };
}
