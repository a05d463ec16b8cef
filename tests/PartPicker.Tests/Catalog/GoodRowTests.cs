using PartPicker.Parts;
using Xunit;

namespace PartPicker.Tests.Catalog;

public sealed class GoodRowTests
{
    private const double Inch = 0.0254;
    private const double PoundForce = 4.4482216152605;

    [Fact]
    public void The_whole_folder_is_read()
    {
        CatalogContents contents = new TestCatalog().Contents();

        Assert.Equal(
            [
                "ds-geometry", "ds-loads", "ds-old", "ds-rate", "ds-table",
                "fw-plain", "fw-profile", "fw-ramp", "fw-ramp-json", "fw-two", "fw-weighed",
                "dv-geometry", "dv-loads", "dv-pressed", "dv-rate", "dv-tables", "hx-points", "hx-straight", "hx-two",
                "be-1", "be-2", "sh-1", "kt-1", "kt-2", "ap-1",
                "en-1", "dr-1", "dr-2", "dn-1", "dn-adjusted", "dn-paired", "dn-pressed", "ge-1",
                "hauler", "hill-cart", "pusher",
            ],
            contents.Items.Select(i => i.Id));
        Assert.Equal("north", Assert.Single(contents.Outlets).Id);
        Assert.Equal(
            ["hauler", "hill-cart", "pusher"],
            new CatalogSnapshot("r", contents).Machines.Select(m => m.Machine.Id));
    }

    [Fact]
    public void A_drive_spring_in_inches_is_read_into_si()
    {
        var spring = new TestCatalog().Item<DriveSpring>("ds-geometry");

        Assert.Equal("Known by geometry, in inches", spring.Name);
        Assert.Equal(0.192 * Inch, spring.WireDiameter!.Value.Meters, 1e-15);
        Assert.Equal(2.2 * Inch, spring.OutsideDiameter!.Value.Meters, 1e-15);
        Assert.Equal(5, spring.ActiveCoils);
        Assert.Equal(7, spring.TotalCoils);
        Assert.Equal(SpringEnds.ClosedGround, spring.Ends);
        Assert.Equal("music-wire-a228", spring.Material);
        Assert.Equal(3.4 * Inch, spring.FreeLength!.Value.Meters, 1e-15);
        Assert.Equal(1.35 * Inch, spring.SolidLength!.Value.Meters, 1e-15);
        Assert.True(spring.KnownByGeometry);
        Assert.False(spring.KnownByRate);
    }

    [Fact]
    public void A_replaced_number_needs_nothing_but_its_successor()
    {
        TestCatalog catalog = new TestCatalog()
            .Append(TestCatalog.DriveSprings, "ds-bare,,,,,,,,,,,,,,,,,,ds-rate,\n")
            .Append(TestCatalog.DriveSprings, "ds-barer,,,,,,,,,,,,,,,,,,ds-bare,\n");
        CatalogContents contents = catalog.Contents();

        Assert.Equal("ds-rate", new CatalogSnapshot("r", contents).FindCurrentPart("ds-barer")!.Id);
    }

    [Fact]
    public void Ratings_are_read_in_either_system()
    {
        Assert.Equal(17_500, new TestCatalog().Item<DriveSpring>("ds-rate").Rate!.Value.NewtonsPerMeter, 1e-9);
        var loads = new TestCatalog().Item<DriveSpring>("ds-loads");
        Assert.Equal(2.5 * Inch, loads.FirstLength!.Value.Meters, 1e-15);
        Assert.Equal(60 * PoundForce, loads.FirstLoad!.Value.Newtons, 1e-9);
        Assert.True(loads.KnownByTwoLoads);
        var driven = new TestCatalog().Item<DrivenSpring>("dv-loads");
        Assert.Equal(89 * PoundForce * Inch, driven.FirstTorque!.Value.NewtonMeters, 1e-9);
        Assert.Equal(120, driven.SecondTwistDeg);
    }

    [Fact]
    public void A_load_table_is_read_as_points_by_rising_length()
    {
        AssertPoints(
            [(0.04, 900), (0.06, 500), (0.08, 100)], new TestCatalog().Item<DriveSpring>("ds-table").LoadTable!);
    }

    [Fact]
    public void Bare_degrees_in_curves_become_radians()
    {
        AssertPoints([(0, 0), (Math.PI / 2, 14)], new TestCatalog().Item<DrivenSpring>("dv-tables").TorqueTable!);
        AssertPoints(
            [(0, 46 * Math.PI / 180), (0.008, 40 * Math.PI / 180), (0.02, 37 * Math.PI / 180)],
            new TestCatalog().Item<Helix>("hx-points").AnglePoints!);
    }

    [Fact]
    public void A_unit_in_the_header_holds_for_its_cells()
    {
        var flyweight = new TestCatalog().Item<Flyweight>("fw-two");

        Assert.Equal(0.046, flyweight.BodyMass.Kilograms, 1e-15);
        Assert.Equal([0, 0.008, 0.010], flyweight.TipMasses!);
        Assert.Equal([0, 0.004], flyweight.HeelMasses!);
        Assert.Equal(0.042, new TestCatalog().Item<Helix>("hx-two").CamRadius!.Value.Meters, 1e-15);
        Assert.Equal([StationName.Heel, StationName.Tip], flyweight.Stations().Select(s => s.Name));
    }

    [Fact]
    public void Optional_cells_that_are_empty_stay_unknown()
    {
        var spring = new TestCatalog().Item<DriveSpring>("ds-rate");

        foreach (Field field in FieldRegistry.For(ItemKind.DriveSpring))
            Assert.Equal(field.Name is "id" or "name" or "rate" or "freeLength", field.Get(spring) is not null);
    }

    [Fact]
    public void Optional_columns_may_be_left_out()
    {
        var helix = new TestCatalog()
            .Set(TestCatalog.Helices, "id,helixDeg\nhx-two,41.5\n").Item<Helix>("hx-two");

        Assert.Equal(41.5, helix.HelixDeg);
        Assert.Equal("", helix.Name);
        Assert.Null(helix.CamRadius);
    }

    [Fact]
    public void Columns_may_stand_in_any_order()
    {
        var helix = new TestCatalog().Set(
            TestCatalog.Helices, "finishTravel [in],helixDeg,id,finishDeg\n1,44,hx-two,38\n").Item<Helix>("hx-two");

        Assert.Equal((44, 38), (helix.HelixDeg!.Value, helix.FinishDeg!.Value));
        Assert.Equal(Inch, helix.FinishTravel!.Value.Meters, 1e-15);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Any_line_ending_will_do(string ending)
    {
        var catalog = new TestCatalog();
        catalog.Set(TestCatalog.Helices, catalog.Text(TestCatalog.Helices).Replace("\n", ending));

        Assert.Equal(45, catalog.Item<Helix>("hx-two").HelixDeg);
    }

    [Fact]
    public void A_byte_order_mark_and_blank_lines_and_rows_of_empty_cells_are_passed_over()
    {
        var catalog = new TestCatalog();
        foreach (string file in catalog.Files.ToArray())
            catalog.Set(file, "\uFEFF" + catalog.Text(file));
        catalog.Append(TestCatalog.Helices, "\n  \n,,,,,,\nhx-last,,38,,,,\n\n");

        Assert.Equal(38, catalog.Item<Helix>("hx-last").HelixDeg);
    }

    [Fact]
    public void A_quoted_cell_may_hold_commas_and_doubled_quotes()
    {
        var catalog = new TestCatalog().Replace(TestCatalog.Helices, "Straight", "\" 40\"\", \"\"steep\"\" \"");

        Assert.Equal("40\", \"steep\"", catalog.Item<Helix>("hx-straight").Name);
    }

    [Fact]
    public void Machine_pieces_are_read_with_defaults_for_what_is_not_stated()
    {
        var drive = new TestCatalog().Item<DriveClutch>("dr-1");
        var driven = new TestCatalog().Item<DrivenClutch>("dn-1");

        Assert.Equal(0.0245, drive.FullShiftTravel.Meters, 1e-15);
        Assert.Equal(3, drive.ArmCount);
        Assert.Equal(DriveThrustLaw.Locked, drive.ThrustLaw);
        Assert.Equal(0, drive.FlyweightFrictionShare);
        Assert.Null(drive.ArmLength);
        Assert.Equal(0.5, driven.CamTorqueShare);
        Assert.Equal([new SpringHole("1", 50), new SpringHole("2", 70)], driven.Holes);
        AssertPoints([(1200, 38), (6800, 82), (9200, 58)], new TestCatalog().Item<Engine>("en-1").TorqueCurve);
        Assert.Equal(13.4 * Inch, new TestCatalog().Item<Gearing>("ge-1").TyreRadius.Meters, 1e-15);
    }

    [Fact]
    public void A_value_has_its_own_origin_or_that_of_its_item_and_names_have_none()
    {
        Assert.Equal(
            new Dictionary<string, Origin>
            {
                ["torqueCurve"] = Origin.Drawing,
                ["revLimitRpm"] = Origin.Measured,
                ["idleRpm"] = Origin.Measured,
            },
            new TestCatalog().Item<Engine>("en-1").Origins);
        Assert.Equal(Origin.ClassDefault, new TestCatalog().Item<DriveClutch>("dr-1").Origins["contactPitchRadius"]);
        Assert.Equal(Origin.Measured, new TestCatalog().Item<DrivenClutch>("dn-1").Origins["holes"]);
        Assert.Equal(
            new Dictionary<string, Origin> { ["centreDistance"] = Origin.Measured },
            new TestCatalog().Item<Machine>("hill-cart").Origins);
    }

    [Fact]
    public void Holes_may_have_the_names_that_a_wrapper_uses()
    {
        var catalog = new TestCatalog()
            .Replace(TestCatalog.Machine, """{ "value": { "1": 50, "2": 70 }, "origin": "measured" }""",
                """{ "1": 50, "2": 70, "value": 90, "origin": 110 }""");

        var clutch = catalog.Item<DrivenClutch>("dn-1");

        Assert.Equal(["1", "2", "value", "origin"], clutch.Holes.Select(h => h.Name));
        Assert.Equal(Origin.Drawing, clutch.Origins["holes"]);
    }

    [Fact]
    public void A_fitted_set_and_measured_runs_are_read()
    {
        var machine = new TestCatalog().Item<Machine>("hill-cart");

        PartSet fitted = machine.Fitted!;
        Assert.Equal(("ds-rate", "fw-two", "dv-rate", "2", "hx-two"),
            (fitted.DriveSpring, fitted.Flyweight, fitted.DrivenSpring, fitted.Hole, fitted.Helix));
        Assert.Equal(
            new Dictionary<StationName, double> { [StationName.Heel] = 0.004, [StationName.Tip] = 0.010 },
            fitted.StationMasses);

        Assert.Equal(2, machine.Baselines.Count);
        Baseline flat = machine.Baselines[0];
        Assert.Equal((fitted, 1970d, 7940d), (flat.Parts, flat.EngagementRpm, flat.FlatShiftRpm!.Value));
        Assert.Empty(flat.Shift);
        Assert.Equal(default, flat.Air);
        Baseline sloped = machine.Baselines[1];
        Assert.Equal(("ds-loads", "1"), (sloped.Parts.DriveSpring, sloped.Parts.Hole));
        Assert.Empty(sloped.Parts.StationMasses);
        Assert.Equal([new RatioRpm(2.4, 7880), new RatioRpm(0.9, 8000)], sloped.Shift);
        Assert.Null(sloped.FlatShiftRpm);
        Assert.Equal(304.8, sloped.Air.AltitudeM, 1e-9);
        Assert.Equal(293.15, sloped.Air.TemperatureK!.Value, 1e-9);
        Assert.Equal(0.55, sloped.Air.RelativeHumidity);
    }

    [Fact]
    public void Pieces_of_one_machine_may_stand_in_several_files()
    {
        var catalog = new TestCatalog();
        catalog.Replace(TestCatalog.Machine, """
              "gearings": [{ "id": "ge-1", "origin": "drawing", "tyreRadius": "13.4 in", "finalDrive": 11 }],
            """, "");
        catalog.Set("machines/a-gearing.json",
            """{ "gearings": [{ "id": "ge-1", "origin": "drawing", "tyreRadius": "13 in", "finalDrive": 9 }] }""");

        Assert.Equal(9, catalog.Item<Gearing>("ge-1").FinalDrive);
    }

    [Fact]
    public void Unknown_price_and_stock_stay_unknown()
    {
        Outlet outlet = Assert.Single(new TestCatalog().Contents().Outlets);

        Assert.Equal("CAD", outlet.Currency);
        Assert.Equal(
            new Dictionary<string, Offer>
            {
                ["ds-rate"] = new(2450, 6),
                ["fw-two"] = new(null, 0),
                ["hx-two"] = new(9400, null),
                ["kt-1"] = new(29_900, 1),
                ["be-2"] = new(14_900, 2),
                ["sh-1"] = new(350, 40),
            },
            outlet.Offers);
    }

    [Fact]
    public void Labour_goes_to_its_outlet_and_no_file_of_it_is_needed()
    {
        Assert.Equal(
            new Dictionary<Slot, int> { [Slot.DriveSpring] = 35, [Slot.Hole] = 0 },
            Assert.Single(new TestCatalog().Contents().Outlets).LabourMinutes);
        Assert.Empty(Assert.Single(new TestCatalog().Remove(TestCatalog.Labour).Contents().Outlets).LabourMinutes);
    }

    [Fact]
    public void Trade_facts_are_read()
    {
        var spring = new TestCatalog().Item<DriveSpring>("ds-old");

        Assert.Equal((SoldAs.Pair, 2, "ds-rate"), (spring.SoldAs!.Value, spring.PackQuantity!.Value, spring.SupersededBy));
        Assert.Equal(
            [new("dr-1", 2018, 2023), new("dr-elsewhere", null, null), new("dn-1", 2020, null), new("dr-2", null, 2016)],
            spring.FitsClutches!);
        Assert.Equal(
            [new ClutchFit("dr-2", 2018, 2023), new ClutchFit("dn-far", null, 2016)],
            new TestCatalog().Item<Kit>("kt-2").FitsClutches!);
    }

    [Fact]
    public void Kits_are_read_from_CSV_and_JSON_with_one_pack_where_none_is_said()
    {
        Assert.Equal(
            [new KitLine("ds-rate", 1), new KitLine("fw-two", 1), new KitLine("sh-1", 2)],
            new TestCatalog().Item<Kit>("kt-1").Contents);
        Assert.Equal(
            [new KitLine("ds-old", 1), new KitLine("be-2", 2)], new TestCatalog().Item<Kit>("kt-2").Contents);
    }

    [Fact]
    public void A_ramp_is_read_by_its_steps_from_CSV_and_JSON()
    {
        var ramp = new TestCatalog().Item<Flyweight>("fw-ramp");
        var inJson = new TestCatalog().Item<Flyweight>("fw-ramp-json");

        Assert.Equal(["1", "2"], ramp.AdjusterCurves!.Select(c => c.Name));
        AssertPoints([(0, 0.040), (0.028, 0.064)], ramp.AdjusterCurves![0].Points);
        AssertPoints([(0, 0.0402), (0.028, 0.065)], ramp.AdjusterCurves[1].Points);
        Assert.Equal([0.0103, 0.012], ramp.PinMasses!);
        Assert.Equal(["1", "value"], inJson.AdjusterCurves!.Select(c => c.Name));
        AssertPoints([(0, 0.0402), (0.028, 0.065)], inJson.AdjusterCurves![1].Points);
        Assert.Equal(
            new Dictionary<string, Origin>
            {
                ["bodyMass"] = Origin.Measured,
                ["pinMasses"] = Origin.Measured,
                ["adjusterCurves"] = Origin.Measured,
            },
            inJson.Origins);
    }

    [Fact]
    public void A_list_of_curves_may_state_an_origin_of_its_own()
    {
        var catalog = new TestCatalog()
            .Replace(TestCatalog.Haulers, "\"adjusterCurves\": {", "\"adjusterCurves\": { \"origin\": \"drawing\", \"value\": {")
            .Replace(TestCatalog.Haulers, "\"65 mm\"]]\n", "\"65 mm\"]]}\n");

        var ramp = catalog.Item<Flyweight>("fw-ramp-json");

        Assert.Equal(["1", "value"], ramp.AdjusterCurves!.Select(c => c.Name));
        Assert.Equal(Origin.Drawing, ramp.Origins["adjusterCurves"]);
    }

    [Fact]
    public void A_body_of_a_known_make_has_the_curves_of_its_profile_once_it_is_in_the_catalog()
    {
        CatalogContents contents = new TestCatalog().Contents();

        var asImported = (Flyweight)contents.Items.Single(i => i.Id == "fw-profile");
        var inUse = (Flyweight)new CatalogSnapshot("r", contents).FindPart("fw-profile")!;

        Assert.Empty(asImported.RadiusCurve);
        Assert.Equal((MassHolding.Rivet, 0.008), (asImported.TipHolding!.Value, asImported.TipMassLimit!.Value.Kilograms));
        AssertPoints([(0, 0.040), (0.028, 0.066)], inUse.RadiusCurve);
        Assert.Equal([StationName.Tip], inUse.Stations().Select(s => s.Name));
    }

    [Fact]
    public void A_body_may_be_known_only_against_another()
    {
        var body = new TestCatalog().Item<Flyweight>("fw-weighed");

        Assert.Equal(("fw-two", -0.003), (body.ReferenceArmId, body.MassOverReference!.Value.Kilograms));
        Assert.Equal(0, body.BodyMass.Kilograms);
    }

    [Fact]
    public void A_driven_spring_of_unknown_twist_is_taken()
    {
        var spring = new TestCatalog().Item<DrivenSpring>("dv-pressed");

        Assert.True(spring.CompressionKnown);
        Assert.False(spring.TwistKnown);
    }

    [Fact]
    public void A_belt_of_a_list_has_the_figures_of_its_supplier_and_facts_of_trade_have_no_origin()
    {
        var belt = new TestCatalog().Item<Belt>("be-2");

        Assert.Equal(0.036, belt.TopWidth!.Value.Meters, 1e-15);
        Assert.Equal(SoldAs.Each, belt.SoldAs);
        Assert.Equal(
            ["efficiency", "friction", "massPerLength", "pitchLength", "topWidth", "wearLimit"],
            belt.Origins.Keys.Order(StringComparer.Ordinal));
        Assert.All(belt.Origins.Values, origin => Assert.Equal(Origin.Drawing, origin));
        Assert.Empty(new TestCatalog().Item<Shim>("sh-1").Origins);
    }

    [Fact]
    public void Model_years_have_no_origin()
    {
        var catalog = new TestCatalog()
            .Replace(TestCatalog.Haulers, "\"dr-2\", \"origin\": \"measured\"", "\"dr-2\", \"origin\": \"classDefault\"");

        var clutch = catalog.Item<DriveClutch>("dr-2");

        Assert.Equal((2016, 2024), (clutch.FromYear!.Value, clutch.ToYear!.Value));
        Assert.Equal(Origin.ClassDefault, clutch.Origins["shimLimit"]);
        Assert.DoesNotContain("fromYear", clutch.Origins.Keys);
    }

    [Fact]
    public void Adjusters_pairs_of_holes_and_clutches_that_twist_nothing_are_read()
    {
        Assert.Equal(
            ["40", "50", "60", "70", "80"],
            new TestCatalog().Item<DrivenClutch>("dn-adjusted").TwistChoices().Select(h => h.Name));
        Assert.Equal(
            [SpringHole.Pair("2", "A", 70), SpringHole.Pair("2", "B", 85.5)],
            new TestCatalog().Item<DrivenClutch>("dn-paired").Holes);
        Assert.Equal(DrivenFamily.CompressionOnly, new TestCatalog().Item<DrivenClutch>("dn-pressed").Family);
    }

    [Fact]
    public void An_adjuster_may_have_as_many_settings_as_a_field_has_points()
    {
        var clutch = new TestCatalog().Replace(
            TestCatalog.Haulers, "\"adjusterToDeg\": 80, \"adjusterStepDeg\": 10",
            "\"adjusterToDeg\": 239, \"adjusterStepDeg\": 1").Item<DrivenClutch>("dn-adjusted");

        Assert.Equal(Field.MaxPoints, clutch.TwistChoices().Count);
    }

    [Fact]
    public void A_fitted_set_may_name_a_step_a_pin_mass_and_shims_and_a_run_may_have_no_engagement()
    {
        var hauler = new TestCatalog().Item<Machine>("hauler");

        Assert.Equal("2", hauler.Fitted!.AdjusterStep);
        Assert.Equal(new FittedShims("sh-1", 2), hauler.Fitted.Shims);
        Assert.Equal(
            new Dictionary<StationName, double> { [StationName.Pin] = 0.0103 }, hauler.Fitted.StationMasses);
        Assert.Null(Assert.Single(hauler.Baselines).EngagementRpm);
        Assert.Equal(("utility", 2016, 2020), (hauler.Use, hauler.FromYear!.Value, hauler.ToYear!.Value));
    }

    [Fact]
    public void A_replaced_part_may_be_replaced_as_often_as_is_followed()
    {
        var catalog = new TestCatalog().Append(TestCatalog.DriveSprings, Replaced(CatalogSnapshot.MaxSupersessions));

        Assert.Equal("ds-rate", new CatalogSnapshot("r", catalog.Contents()).FindCurrentPart("ds-1")!.Id);
    }

    /// <summary>Rows ds-1 to ds-n, each replaced by the next and the last by ds-rate.</summary>
    internal static string Replaced(int count) => string.Concat(Enumerable.Range(1, count).Select(i =>
        $"ds-{i},,,,,,,,90 mm,,17 N/mm,,,,,,,,{(i < count ? $"ds-{i + 1}" : "ds-rate")},\n"));

    [Theory]
    [InlineData("0.5 mm", "200 mm")]
    [InlineData("20 mm", "200 mm")]
    [InlineData("0.5e-3 m", "20 cm")]
    public void The_ends_of_a_range_belong_to_it_in_any_unit(string wire, string outside)
    {
        var spring = new TestCatalog().Set(TestCatalog.DriveSprings, $"""
            id,wireDiameter,outsideDiameter,freeLength,rate
            ds-rate,{wire},{outside},400 mm,100 N/m
            ds-loads,,,5 mm,1000 N/mm
            ds-old,,,5 mm,1000 N/mm
            """).Item<DriveSpring>("ds-rate");

        Assert.Equal(0.4, spring.FreeLength!.Value.Meters, 1e-12);
    }

    [Fact]
    public void Hidden_files_notes_and_ready_made_requests_are_passed_over()
    {
        new TestCatalog()
            .Set(".note.csv", "x")
            .Set("README.md", "x")
            .Set("machines/README.md", "x")
            .Set("requests/pick.json", "not read here")
            .Set("answers/pick.json", "not read here")
            .Contents();
    }

    private static void AssertPoints((double X, double Y)[] expected, IReadOnlyList<CurvePoint> actual)
    {
        Assert.Equal(expected.Length, actual.Count);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].X, actual[i].X, 1e-12);
            Assert.Equal(expected[i].Y, actual[i].Y, 1e-12);
        }
    }
}
