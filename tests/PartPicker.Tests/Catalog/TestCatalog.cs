using System.Text;
using PartPicker.Catalog;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Tests.Catalog;

/// <summary>A small sound catalog as files; a test spoils or changes it and reads it from a folder of its own.</summary>
internal sealed class TestCatalog
{
    public const string DriveSprings = "drive-springs.csv";
    public const string Flyweights = "flyweights.csv";
    public const string DrivenSprings = "driven-springs.csv";
    public const string Helices = "helices.csv";
    public const string Belts = "belts.csv";
    public const string Shims = "shims.csv";
    public const string Kits = "kits.csv";
    public const string Machine = "machines/hill-cart.json";

    /// <summary>Machines that are started by other devices, with ramps, adjusters and pairs of holes.</summary>
    public const string Haulers = "machines/haulers.json";

    public const string Outlet = "outlets/north.csv";
    public const string Labour = "labour.csv";

    private readonly Dictionary<string, byte[]> files = new()
    {
        [DriveSprings] = Encoding.UTF8.GetBytes(
            """
            id,name,wireDiameter,outsideDiameter,activeCoils,totalCoils,ends,material,freeLength,solidLength,rate,firstLength,firstLoad,secondLength,secondLoad,loadTable,soldAs,packQuantity,supersededBy,fitsClutches
            ds-geometry,"Known by geometry, in inches",0.192 in,2.2 in,5,7,closedGround,music-wire-a228,3.4 in,1.35 in,,,,,,,,,,
            ds-rate,Known by rate,,,,,,,90 mm,,17.5 N/mm,,,,,,,,,
            ds-loads,Known by two loads,,,,,,,3.5 in,,,2.5 in,60 lbf,1.5 in,120 lbf,,,,,
            ds-table,Known by a table,,,,,,,,,,,,,,40 mm: 900 N; 60 mm: 500 N; 80 mm: 100 N,,,,
            ds-old,Replaced,,,,,,,90 mm,,17 N/mm,,,,,,pair,2,ds-rate,dr-1 2018-2023; dr-elsewhere; dn-1 2020-; dr-2 -2016

            """),
        [Flyweights] = Encoding.UTF8.GetBytes(
            """
            id,name,bodyMass [g],armLength,radiusCurve,heelCurve,heelMasses,tipCurve,tipMasses [g],armProfile,referenceArm,massOverReference,adjusterCurves,pinMasses,tipHolding,tipMassLimit
            fw-plain,Plain arm,55,,0 mm: 40 mm; 28 mm: 66 mm,,,,,,,,,,,
            fw-two,Arm with two stations,46,58 mm,0 mm: 40.5 mm; 3 mm: 44.5 mm; 28 mm: 66.9 mm,0 mm: 36 mm; 28 mm: 56 mm,0 g; 4 g,0 mm: 44 mm; 28 mm: 86 mm,0; 8; 10,,,,,,,
            fw-profile,Arm of a known make,44,,,,,,0; 5,ap-1,,,,,rivet,8 g
            fw-weighed,Arm against another,,,,,,,,,fw-two,-3 g,,,,
            fw-ramp,Ramp of two steps,40,,,,,,,,,,1 = 0 mm: 40 mm; 28 mm: 64 mm | 2 = 0 mm: 40.2 mm; 28 mm: 65 mm,10.3 g; 12 g,,

            """),
        [DrivenSprings] = Encoding.UTF8.GetBytes(
            """
            id,name,wireDiameter,outsideDiameter,insideDiameter,activeCoils,bodyCoils,material,freeLength,rate,loadLength,load,twistRate,firstTwistDeg,firstTorque,secondTwistDeg,secondTorque,loadTable,torqueTable
            dv-rate,Known by rates,,,49.7 mm,,5,,100 mm,9 N/mm,,,9 N·m/rad,,,,,,
            dv-geometry,Known by geometry,5.3 mm,60.3 mm,49 mm,5.1,4.8,chrome-silicon-a401,103 mm,,,,,,,,,,
            dv-loads,Known by loads,,,,,,,4 in,,2.4 in,80 lbf,,60,89 lbf·in,120,178 lbf·in,,
            dv-tables,Known by tables,,,,,,,,,,,,,,,,40 mm: 540 N; 60 mm: 360 N,0: 0 N·m; 90: 14 N·m
            dv-pressed,Never twisted,,,,,,,98 mm,8 N/mm,,,,,,,,,

            """),
        [Helices] = Encoding.UTF8.GetBytes(
            """
            id,name,helixDeg,finishDeg,finishTravel,anglePoints,camRadius [mm]
            hx-straight,Straight,40,,,,42
            hx-two,Two angles,45,37,0.9 in,,42
            hx-points,Three angles,,,,0 mm: 46; 8 mm: 40; 20 mm: 37,

            """),
        [Belts] = Encoding.UTF8.GetBytes(
            """
            id,name,pitchLength,massPerLength,friction,efficiency,topWidth,wearLimit,soldAs
            be-2,Belt of a list,1010 mm,0.47 kg/m,0.36,0.95,36 mm,33.5 mm,each

            """),
        [Shims] = Encoding.UTF8.GetBytes(
            """
            id,name,thickness [mm],outsideDiameter,insideDiameter,packQuantity
            sh-1,Shim of 1 mm,1,56 mm,40 mm,5

            """),
        [Kits] = Encoding.UTF8.GetBytes(
            """
            id,name,contents
            kt-1,Spring and arms,ds-rate; fw-two; sh-1 x2

            """),
        [Machine] = Encoding.UTF8.GetBytes(
            """
            {
              "engines": [{
                "id": "en-1", "name": "Twin", "origin": "measured",
                "torqueCurve": { "value": [[1200, "38 N·m"], [6800, "82 N·m"], [9200, "58 N·m"]], "origin": "drawing" },
                "revLimitRpm": 9000, "idleRpm": 1200
              }],
              "driveClutches": [{
                "id": "dr-1", "origin": "measured",
                "sheaveHalfAngleDeg": 13, "contactTravel": "3 mm", "fullShiftTravel": "24.5 mm",
                "contactPitchRadius": { "value": "34 mm", "origin": "classDefault" },
                "armCount": 3, "springLength": "72 mm", "thrustLaw": "locked", "cupBore": "62 mm", "postDiameter": "38 mm"
              }],
              "drivenClutches": [{
                "id": "dn-1", "origin": "drawing", "camRadius": "42 mm", "springLength": "60 mm",
                "holes": { "value": { "1": 50, "2": 70 }, "origin": "measured" }
              }],
              "belts": [{
                "id": "be-1", "origin": "drawing",
                "pitchLength": "992 mm", "massPerLength": "0.45 kg/m", "friction": 0.36, "efficiency": 0.95
              }],
              "gearings": [{ "id": "ge-1", "origin": "drawing", "tyreRadius": "13.4 in", "finalDrive": 11 }],
              "machines": [{
                "id": "hill-cart", "name": "Hill cart", "origin": "measured",
                "engine": "en-1", "driveClutch": "dr-1", "drivenClutch": "dn-1", "belt": "be-1", "gearing": "ge-1",
                "centreDistance": "270 mm",
                "fitted": {
                  "driveSpring": "ds-rate", "flyweight": "fw-two", "stationMasses": { "heel": "4 g", "tip": "10 g" },
                  "drivenSpring": "dv-rate", "hole": "2", "helix": "hx-two"
                },
                "baselines": [
                  { "engagementRpm": 1970, "shiftRpm": 7940 },
                  {
                    "parts": {
                      "driveSpring": "ds-loads", "flyweight": "fw-plain",
                      "drivenSpring": "dv-rate", "hole": "1", "helix": "hx-two"
                    },
                    "engagementRpm": 2100, "shiftCurve": [{ "ratio": 2.4, "rpm": 7880 }, { "ratio": 0.9, "rpm": 8000 }],
                    "altitude": "1000 ft", "temperature": "68 °F", "relativeHumidity": "55 %"
                  }
                ]
              }]
            }
            """),
        [Haulers] = Encoding.UTF8.GetBytes(
            """
            {
              "armProfiles": [{
                "id": "ap-1", "origin": "drawing", "fromYear": 2012,
                "radiusCurve": [["0 mm", "40 mm"], ["28 mm", "66 mm"]], "tipCurve": [["0 mm", "44 mm"], ["28 mm", "86 mm"]]
              }],
              "driveClutches": [{
                "id": "dr-2", "origin": "measured", "fromYear": 2016, "toYear": 2024,
                "sheaveHalfAngleDeg": 13, "contactTravel": "0.5 mm", "fullShiftTravel": "24.5 mm", "contactPitchRadius": "34 mm",
                "armCount": 3, "springLength": "72 mm", "family": "rollerOnAdjustableRamp", "startDevice": "centrifugalClutch",
                "springSeat": "flat", "shimLimit": 3, "pinDiameter": "8 mm", "rollerDiameter": "16 mm", "tipClearanceRadius": "95 mm"
              }],
              "drivenClutches": [
                {
                  "id": "dn-adjusted", "origin": "drawing", "camRadius": "42 mm", "springLength": "60 mm",
                  "adjusterFromDeg": 40, "adjusterToDeg": 80, "adjusterStepDeg": 10,
                  "windingHand": "left", "legs": "tangs", "helixMount": "splined"
                },
                { "id": "dn-pressed", "origin": "drawing", "camRadius": "42 mm", "springLength": "60 mm", "family": "compressionOnly" },
                {
                  "id": "dn-paired", "origin": "drawing", "camRadius": "42 mm", "springLength": "60 mm",
                  "holes": [{ "sheave": "2", "helix": "A", "twistDeg": 70 }, { "sheave": "2", "helix": "B", "twistDeg": 85.5 }]
                }
              ],
              "flyweights": [{
                "id": "fw-ramp-json", "origin": "measured", "bodyMass": "40 g", "pinMasses": ["10.3 g"],
                "adjusterCurves": {
                  "1": [["0 mm", "40 mm"], ["28 mm", "64 mm"]],
                  "value": [["0 mm", "40.2 mm"], ["28 mm", "65 mm"]]
                }
              }],
              "kits": [{
                "id": "kt-2", "origin": "drawing", "contents": [{ "part": "ds-old" }, { "part": "be-2", "packs": 2 }],
                "fitsClutches": [{ "clutch": "dr-2", "fromYear": 2018, "toYear": 2023 }, { "clutch": "dn-far", "toYear": 2016 }]
              }],
              "machines": [
                {
                  "id": "hauler", "origin": "measured", "fromYear": 2016, "toYear": 2020, "use": "utility",
                  "engine": "en-1", "driveClutch": "dr-2", "drivenClutch": "dn-adjusted", "belt": "be-2", "gearing": "ge-1",
                  "centreDistance": "270 mm",
                  "fitted": {
                    "driveSpring": "ds-rate", "flyweight": "fw-ramp", "adjusterStep": "2", "stationMasses": { "pin": "10.3 g" },
                    "shims": { "shim": "sh-1", "count": 2 }, "drivenSpring": "dv-rate", "hole": "60", "helix": "hx-two"
                  },
                  "baselines": [{ "shiftRpm": 7800 }]
                },
                {
                  "id": "pusher", "origin": "measured",
                  "engine": "en-1", "driveClutch": "dr-1", "drivenClutch": "dn-pressed", "belt": "be-2", "gearing": "ge-1",
                  "centreDistance": "270 mm",
                  "fitted": {
                    "driveSpring": "ds-rate", "flyweight": "fw-profile", "stationMasses": { "tip": "5 g" },
                    "drivenSpring": "dv-pressed", "hole": "none", "helix": "hx-two"
                  }
                }
              ]
            }
            """),
        [Outlet] = Encoding.UTF8.GetBytes(
            """
            partId,currency,priceMinor,stock
            ds-rate,CAD,2450,6
            fw-two,CAD,,0
            hx-two,CAD,9400,
            kt-1,CAD,29900,1
            be-2,CAD,14900,2
            sh-1,CAD,350,40

            """),
        [Labour] = Encoding.UTF8.GetBytes(
            """
            outlet,slot,minutes
            north,driveSpring,35
            north,hole,0

            """),
    };

    public IReadOnlyCollection<string> Files => files.Keys;

    public string Text(string file) => Encoding.UTF8.GetString(files[file]);

    public TestCatalog Set(string file, string text) => Set(file, Encoding.UTF8.GetBytes(text));

    public TestCatalog Set(string file, byte[] bytes)
    {
        files[file] = bytes;
        return this;
    }

    public TestCatalog Append(string file, string text) => Set(file, Text(file) + text);

    public TestCatalog Replace(string file, string old, string @new)
    {
        Assert.Contains(old, Text(file));
        int at = Text(file).IndexOf(old, StringComparison.Ordinal);
        return Set(file, Text(file).Remove(at, old.Length).Insert(at, @new));
    }

    public TestCatalog Remove(string file)
    {
        Assert.True(files.Remove(file));
        return this;
    }

    public TestCatalog Clear()
    {
        files.Clear();
        return this;
    }

    public ImportResult Read()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("part-picker-catalog-");
        try
        {
            foreach ((string name, byte[] bytes) in files)
            {
                string path = Path.Combine(folder.FullName, name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, bytes);
            }

            return CatalogImport.ReadFolder(folder.FullName);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public CatalogContents Contents()
    {
        ImportResult result = Read();
        Assert.Empty(result.Findings);
        return result.Contents!;
    }

    /// <summary>The only item of that id in the contents.</summary>
    public T Item<T>(string id) where T : CatalogItem => (T)Contents().Items.Single(i => i.Id == id);
}
