using PartPicker.Mechanics;
using PartPicker.Selection;
using PartPicker.TestKit;

namespace PartPicker.Tests.Selection;

/// <summary>A random catalog, its pools as boxes, and its sets.</summary>
internal sealed class SearchCase
{
    /// <summary>Catalogs that a property is tried on.</summary>
    public const int Catalogs = 150;

    private readonly Random random;

    public SearchCase(int seed, int maxPerPool = 4)
    {
        var catalog = new RandomCatalog(seed, maxPerPool);
        random = new Random(seed);
        Request = catalog.Request;
        MachineModel machine = MachineModel.Create(Request.Machine, [])!;
        Predictor = PredictorBuilder.Build(
            catalog.Snapshot, machine, Request.Machine.OwnBaseline, "", Request.Air, Request.AirLaw, Request.PointCount, [])!;
        SetUp fitted = new SetUpReader(catalog.Snapshot, Request.Machine, [], []).Find(Request.Machine.Machine.Fitted!, "")!;
        CandidatePools pools = new PoolBuilder(catalog.Snapshot, machine, fitted, Request, new FitReport()).Build([], default)!;
        Index = SearchIndex.Build(pools, fitted, machine, Request.PointCount, default);
        WantedRpm wanted = ShiftGoals.Of(Request.Target, Predictor, fitted, [])!;
        Score = new Score(wanted, Request);
        Bounds = new SetBounds(Predictor, Score, Index, Request.SlipMargin);
    }

    public PickRequest Request { get; }

    public Score Score { get; }

    public Predictor Predictor { get; }

    public SearchIndex Index { get; }

    public SetBounds Bounds { get; }

    public double RevLimit => Predictor.Machine.Drivetrain.RevLimitRpm;

    /// <summary>Some sets, no more than a test has time for.</summary>
    public void EachSet(Action<int, int, int> visit, int sets = 12)
    {
        for (int i = 0; i < sets; i++)
        {
            visit(
                random.Next(Index.Pools.DriveSprings.Count), random.Next(Index.Pools.Flyweights.Count),
                random.Next(Index.Pools.Driven.Count));
        }
    }

    public (double Least, double Greatest) Engagement(int spring, int flyweight) => Bounds.Engagement(
        Index.Springs.Low(spring), Index.Springs.High(spring), Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight));

    /// <summary>A drive pair by itself with its true engagement, and all that the driven side has.</summary>
    public Node Pair(int s, int f)
    {
        double rpm = Predictor.Drive(Index.Pools.DriveSprings[s], Index.Pools.Flyweights[f]).Engagement.Rpm;
        return new Node
        {
            Spring = Around(Index.Springs, s, int.MaxValue), Flyweight = Around(Index.Flyweights, f, int.MaxValue),
            LeastEngagement = rpm, GreatestEngagement = rpm,
        };
    }

    /// <summary>What the model says; null where the set is refused.</summary>
    public Judged? Judge(int s, int f, int d)
    {
        DriveSide drive = Predictor.Drive(Index.Pools.DriveSprings[s], Index.Pools.Flyweights[f]);
        DrivenSide driven = Predictor.Driven(Index.Pools.Driven[d]);
        var errors = new double[Predictor.Model.Positions.Count];
        for (int j = 0; j < errors.Length; j++)
        {
            if (Predictor.Model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) is not { } rpm
                || Predictor.Model.UpshiftSlipMargin(rpm, driven, j) < Request.SlipMargin)
            {
                return null;
            }

            errors[j] = Score.ShiftError(j, rpm);
        }

        double engagement = Score.EngagementError(drive.Engagement.Rpm);
        return new Judged(
            s, f, Score.Miss(engagement, errors), errors.Append(engagement).Max(Math.Abs), errors.Sum(e => e * e));
    }

    /// <summary>The bound of the box around a set, so many steps down each tree, windows handed down as the search does.</summary>
    public BoxVerdict Bound(int depth, int s, int f, int d, out double bound, out double error)
    {
        var window = new ushort[Bounds.WindowLength];
        Bounds.Open(window);
        (bound, error) = (0, 0);
        for (int step = 0; step <= depth; step++)
        {
            int spring = Around(Index.Springs, s, step);
            int flyweight = Around(Index.Flyweights, f, step);
            int driven = Around(Index.Driven, d, step);
            var node = new Node { Spring = spring, Flyweight = flyweight, Driven = driven };
            (node.LeastEngagement, node.GreatestEngagement) = Engagement(spring, flyweight);
            BoxVerdict verdict = Bounds.Bound(
                Index.Springs.Low(spring), Index.Springs.High(spring),
                Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight),
                Index.Driven.Low(driven), Index.Driven.High(driven), Cuts.None, ref node, window, out bound);
            if (verdict != BoxVerdict.Open)
                return verdict;
            error = node.LeastError;
        }

        return BoxVerdict.Open;
    }

    public static int Around(BoxTree tree, int item, int depth)
    {
        int node = 0;
        for (int step = 0; step < depth && !tree.IsLeaf(node); step++)
            node = tree.Items(tree.Child(node)).Contains(item) ? tree.Child(node) : tree.Child(node) + 1;
        return node;
    }

    /// <summary>A set as the model sees it: its miss, its greatest error, and Σe² along the curve.</summary>
    internal sealed record Judged(int Spring, int Flyweight, double Miss, double Greatest, double Squares);
}
