using System.Collections.Immutable;

namespace QuarterCar.Model.Selection;

/// <summary>What `pick` is asked, SI: one coilover's load and lengths, and the springs to choose from.</summary>
/// <param name="Load">On the coilover, gas included, N, above 0.</param>
/// <param name="Stroke">m.</param>
/// <param name="RideHeight">Wanted shaft showing, m, above 0 and below the stroke.</param>
/// <param name="Springs">For the upper and the lower place, in list order.</param>
public sealed record PickData(double Load, double Stroke, double RideHeight, ImmutableArray<SpringData> Springs)
{
    /// <summary>Preload wanted at ride height where nothing is said, m.</summary>
    public const double DefaultPreload = 0.025;

    /// <summary>Tenders to try above every pair; empty for pairs alone.</summary>
    public ImmutableArray<SpringData> Tenders { get; init; } = [];

    /// <summary>Wanted preload at ride height, m, not negative.</summary>
    public double Preload { get; init; } = DefaultPreload;

    /// <summary>Stop-nut gap at ride height, m, not negative; null leaves the slider free.</summary>
    public double? Gap { get; init; }

    /// <summary>Null without gas.</summary>
    public GasData? Gas { get; init; }

    /// <summary>Lengths of the body; null where none is given.</summary>
    public BodyData? Body { get; init; }

    /// <summary>Shaft travel at the wanted ride height, m.</summary>
    public double Travel => Stroke - RideHeight;
}

/// <summary>Checks that a set of springs can fail; any of them ranks it below every set that passes.</summary>
[Flags]
public enum PickChecks
{
    /// <summary>Passes every check that could be made.</summary>
    None = 0,

    /// <summary>The wanted ride height needs negative preload.</summary>
    Loose = 1,

    /// <summary>Upper or lower spring binds before full bump.</summary>
    Binds = 2,

    /// <summary>The coil nut would stand above its thread: the stack is too long for the body.</summary>
    BelowLeastPreload = 4,

    /// <summary>The coil nut would stand past the end of its thread.</summary>
    BeyondThread = 8,

    /// <summary>A spring does not go over the body.</summary>
    OverBody = 16,
}

/// <summary>What somebody must know of a set that passes; it fails no check and ranks nothing.</summary>
[Flags]
public enum PickRemarks
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The lower spring bows sideways before full bump.</summary>
    Bows = 1,

    /// <summary>The tender is not solid at ride height, where it should be out of the way.</summary>
    TenderWorks = 2,
}

/// <summary>Ride heights that a set reaches by preload alone, m of shaft showing.</summary>
/// <param name="LeastPreload">m.</param>
/// <param name="MostPreload">m: the end of the thread, or where a spring would bind at full bump.</param>
/// <param name="Lowest">Shaft showing at the least preload, m.</param>
/// <param name="Highest">Shaft showing at the most preload, m.</param>
public sealed record PickRange(double LeastPreload, double MostPreload, double Lowest, double Highest);

/// <summary>One set of springs with its figures at the wanted ride height, SI.</summary>
/// <param name="Springs">The springs.</param>
/// <param name="PrimaryRate">Of the springs that are not solid at ride height, N/m.</param>
/// <param name="Settle">Shaft travel under the load without preload, m; more than the stroke where the springs are too soft for it.</param>
/// <param name="Preload">For the wanted ride height, m; negative where the springs are too stiff for it.</param>
/// <param name="UpperClearance">Bind clearance of the upper spring at full bump, m; negative where it binds before.</param>
/// <param name="LowerClearance">The same of the lower spring, m.</param>
/// <param name="Range">Null where no preload keeps the springs from binding and on the thread.</param>
/// <param name="ReachesStopNut">True where the slider meets the stop nut within the stroke; null without gap.</param>
/// <param name="TenderSolid">True where the tender is solid at ride height; null without tender.</param>
/// <param name="BowsFrom">Compression at which the lower spring buckles, m, where it is compressed further at full bump; else null.</param>
/// <param name="Failed">Checks that it fails.</param>
public sealed record PickSet(
    SpringSetData Springs,
    double PrimaryRate,
    double Settle,
    double Preload,
    double UpperClearance,
    double LowerClearance,
    PickRange? Range,
    bool? ReachesStopNut,
    bool? TenderSolid,
    double? BowsFrom,
    PickChecks Failed)
{
    /// <summary>The lower spring's, N/m: the rate once the slider is on the stop nut.</summary>
    public double SecondaryRate => Springs.Lower.Rate;

    /// <summary>What is to be said of it even where it passes.</summary>
    public PickRemarks Remarks => RemarksOf(BowsFrom, TenderSolid);

    /// <summary>Secondary over primary.</summary>
    public double RateStep => SecondaryRate / PrimaryRate;

    /// <summary>The lesser of upper and lower, m.</summary>
    public double BindClearance => Math.Min(UpperClearance, LowerClearance);

    internal static PickRemarks RemarksOf(double? bowsFrom, bool? tenderSolid) =>
        (bowsFrom is null ? PickRemarks.None : PickRemarks.Bows) | (tenderSolid == false ? PickRemarks.TenderWorks : PickRemarks.None);
}

/// <summary>Ride height under another load, nothing turned: preload and stop nut stay.</summary>
/// <param name="Share">Change of the load as a share of it.</param>
/// <param name="Load">N, gas included.</param>
/// <param name="RideHeight">Shaft showing, m.</param>
public sealed record PickLoadRow(double Share, double Load, double RideHeight);

/// <summary>The choice with one of its springs replaced by the list's next rate.</summary>
/// <param name="Place">upper or lower.</param>
/// <param name="Set">With its preload for the wanted ride height.</param>
/// <param name="RideHeight">Shaft showing at the choice's own preload, m.</param>
public sealed record PickNeighbour(string Place, PickSet Set, double RideHeight);

/// <summary>The answer: sets of springs, best first.</summary>
/// <param name="Data">What was asked.</param>
/// <param name="RequiredPrimaryRate">(load − gas)/(stroke − ride height + wanted preload), N/m.</param>
/// <param name="SpringForce">Load less gas at ride height, N.</param>
/// <param name="Sets">Best first; at most <see cref="Pick.MostListed"/> of those examined.</param>
/// <param name="Examined">Sets ranked.</param>
/// <param name="Passing">Of these, the ones that fail no check.</param>
/// <param name="PassingBut">How many of those passing have each remark; remarks that none has are not named.</param>
/// <param name="FailedBy">How many fail each check.</param>
/// <param name="Nearest">The set that lacks least, all lengths it is short of added up; null where one passes.</param>
/// <param name="Loads">The best set under other loads.</param>
/// <param name="Neighbours">The best set with neighbouring rates of the list.</param>
public sealed record PickResult(
    PickData Data,
    double RequiredPrimaryRate,
    double SpringForce,
    ImmutableArray<PickSet> Sets,
    long Examined,
    long Passing,
    ImmutableArray<(PickRemarks Remark, long Count)> PassingBut,
    ImmutableArray<(PickChecks Check, long Count)> FailedBy,
    PickSet? Nearest,
    ImmutableArray<PickLoadRow> Loads,
    ImmutableArray<PickNeighbour> Neighbours);
