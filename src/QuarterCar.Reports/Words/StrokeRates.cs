using System.Collections.Immutable;

using QuarterCar.Model.Springs;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>Where the slider meets the stop nut, as far as the stroke goes.</summary>
internal enum NutPlace
{
    /// <summary>There is no stop nut.</summary>
    None,

    /// <summary>Inside the stroke: a crossover.</summary>
    Inside,

    /// <summary>At full droop or before: the slider stands on it over the whole stroke.</summary>
    FromFullDroop,

    /// <summary>Beyond full bump, or the upper group is solid before.</summary>
    Never,
}

/// <summary>A place inside the stroke where the springs' rate changes.</summary>
/// <param name="What">What happens there on the way in, as a clause.</param>
/// <param name="Showing">Shaft showing there, m.</param>
/// <param name="Before">Rate on the side toward droop, N/m; 0 while the springs are loose.</param>
/// <param name="After">Rate on the side toward bump, N/m.</param>
/// <param name="IsCrossover">True where the slider meets the stop nut.</param>
internal sealed record RateChange(string What, double Showing, double Before, double After, bool IsCrossover);

/// <summary>The springs' rates inside the stroke and where they change: every sentence and title that names a crossover or speaks of one rate asks this.</summary>
internal sealed class StrokeRates
{
    private const double Same = 1e-9; // m: nearer than this a break lies on the stroke's end

    private readonly Readable _read;

    private StrokeRates(Readable read, NutPlace nut, double atRide, double only, ImmutableArray<RateChange> changes) =>
        (_read, Nut, AtRide, Only, Changes) = (read, nut, atRide, only, changes);

    /// <summary>Where the slider meets the stop nut.</summary>
    public NutPlace Nut { get; }

    /// <summary>Rate at ride height, N/m, the side toward droop.</summary>
    public double AtRide { get; }

    /// <summary>The one rate of the stroke, N/m, where <see cref="IsOne"/>.</summary>
    public double Only { get; }

    /// <summary>From full droop down.</summary>
    public ImmutableArray<RateChange> Changes { get; }

    /// <summary>True where the rate is the same over the whole stroke.</summary>
    public bool IsOne => Changes.IsEmpty;

    /// <summary>The crossover; null where there is none inside the stroke.</summary>
    public RateChange? Crossover => Changes.FirstOrDefault(c => c.IsCrossover);

    /// <summary>Why there is no crossover inside the stroke.</summary>
    public string WithoutCrossover => Nut switch
    {
        NutPlace.FromFullDroop => "the slider on the stop nut from full droop on",
        NutPlace.Never => "no crossover within the stroke",
        _ => "no crossover",
    };

    /// <summary>Every rate from full droop on and what ends it.</summary>
    public string Chain
    {
        get
        {
            string text = Rate(Changes[0].Before);
            foreach (RateChange c in Changes)
                text += $" until {Place(c)}" + (c.After < SpringStack.SolidRate ? $", then {Rate(c.After)}" : "");
            return text;
        }
    }

    /// <summary>Of a standing corner.</summary>
    public static StrokeRates Of(StandingResult standing, Readable read)
    {
        SpringStack stack = standing.Corner.Stack;
        double preload = standing.Corner.Preload, stroke = standing.Corner.Stroke, before = 0;
        var changes = ImmutableArray.CreateBuilder<RateChange>();
        var nut = stack.HeldTravel is null ? NutPlace.None : NutPlace.Never;
        foreach (StackBreak b in stack.Breaks)
        {
            double x = b.Compression - preload;
            bool crossover = (b.Events & StackEvents.Crossover) != 0, inside = x > Same && x < stroke - Same;
            if (crossover && x <= stroke + Same) nut = x > Same ? NutPlace.Inside : NutPlace.FromFullDroop;
            if (crossover ? nut == NutPlace.Inside : inside && b.RateAbove != before)
                changes.Add(new(What(b.Events), stroke - x, before, b.RateAbove, crossover));
            before = b.RateAbove;
        }

        double Toward(double x) => stack.RateTowardDroop(x + preload, Same);
        return new(read, nut, Toward(standing.Figures.ShaftTravel), Toward(stroke), changes.ToImmutable());
    }

    /// <summary>A rate in words; nothing gives way once the coils are solid.</summary>
    public string Rate(double rate) => rate < SpringStack.SolidRate ? _read.Text(Dimension.Rate, rate) : "solid coils";

    /// <summary>What happens at a change, and where.</summary>
    public string Place(RateChange change) => $"{change.What} at {_read.Text(Dimension.Length, change.Showing)}";

    private static string What(StackEvents events) =>
        events.HasFlag(StackEvents.Crossover) ? "the slider meets the stop nut"
        : events.HasFlag(StackEvents.CoilBind) ? "the coils bind"
        : events.HasFlag(StackEvents.UpperBind) ? "the upper spring goes solid"
        : events.HasFlag(StackEvents.LowerBind) ? "the lower spring goes solid"
        : events.HasFlag(StackEvents.TenderSolid) ? "the tender closes"
        : "the springs seat";
}
