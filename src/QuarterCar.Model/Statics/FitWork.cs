using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Statics;

/// <summary>
/// Works out how the springs fit on the body; lengths in m, preload positive in compression from first contact.
/// <code>
///  coil nut at the top of its thread ├───────── seat length, shaft fully extended ─────────┤ lower spring plate
///  stack without load                ├── free lengths and slider ──────────────────────────┼──┤ least preload
/// </code>
/// </summary>
public static class FitWork
{
    // Two lengths that differ by less are one, m: on the very edge of bind the last bit must not tell a fit from none.
    private const double SameLength = 1e-12;

    /// <summary>The fit of a corner; null without a body.</summary>
    public static FitFigures? Of(Corner corner)
    {
        CoiloverData c = corner.Data.Coilover;
        if (c.Body is not { } body)
            return null;
        double? free = StackFree(c.Springs, body), top = free - body.SeatLength, least = LeastPreload(c.Springs, body);
        var stack = SpringStack.Build(c.Springs, null);
        double? nut = c.Preload - top;
        return new FitFigures(
            free,
            least,
            top + body.Thread is { } end && MostByBind(c.Springs, c.Stroke, c.Preload, corner.Stack.HeldTravel) is { } bind ? Math.Min(end, bind) : null,
            nut,
            body.Thread - nut,
            c.Preload / body.ThreadPitch,
            least is { } p ? stack.Force(p) : null,
            least is { } q ? stack.Energy(q) : null,
            RadialClearance(c.Springs, body));
    }

    /// <summary>Free lengths of all springs and the slider, m; null where there is a slider whose height is not given. A single spring has none; a height given all the same counts as a spacer.</summary>
    public static double? StackFree(SpringSetData springs, BodyData body) =>
        springs.All.Sum(s => s.FreeLength) + (springs.Upper is null ? body.Slider ?? 0 : body.Slider);

    /// <summary>Least preload that the coil nut can set on its thread, m, not negative; null where a length is not given.</summary>
    public static double? LeastPreload(SpringSetData springs, BodyData body) =>
        StackFree(springs, body) - body.SeatLength is { } top ? Math.Max(0, top) : null;

    /// <summary>
    /// Most preload at which neither upper nor lower spring binds before full bump, m; null where one binds at every preload.
    /// The stop nut stays where it is on the body, so the upper group's held travel grows with the preload (physics.md
    /// section 3): once the slider is on the nut at full bump, the preload no longer compresses the lower spring there and
    /// all of it goes into the upper group.
    /// </summary>
    /// <param name="springs">The springs.</param>
    /// <param name="stroke">m.</param>
    /// <param name="preload">Preload at which <paramref name="held"/> holds, m.</param>
    /// <param name="held">C* there, m; null without a stop nut.</param>
    public static double? MostByBind(SpringSetData springs, double stroke, double preload = 0, double? held = null)
    {
        double lowerBind = springs.Lower.Rate * springs.Lower.Travel;

        // On the nut the lower spring is compressed by stroke + p − C* at full bump, whatever the preload.
        double? lowerOnNut = stroke + preload - held;
        if (lowerOnNut > springs.Lower.Travel + SameLength)
            return null;
        double most = Group(springs, lowerBind) + springs.Lower.Travel - stroke;
        if (springs.Upper is not { } upper)
            return most;
        double upperBind = upper.Rate * upper.Travel, group = Group(springs, upperBind);
        double byUpper = group + upperBind / springs.Lower.Rate - stroke;
        if (held is { } nut)
            byUpper = Math.Max(byUpper, preload + group - nut); // the later of the two holds: with the slider on the nut it is the second
        return Math.Min(most, byUpper);
    }

    /// <summary>Half of what the tightest spring is wider than the body, m; null where the body's or a spring's diameter is not given.</summary>
    public static double? RadialClearance(SpringSetData springs, BodyData body)
    {
        double least = double.PositiveInfinity;
        foreach (SpringData s in springs.All)
        {
            if (s.CoilInner is not { } inner)
                return null;
            least = Math.Min(least, inner);
        }

        return (least - body.Diameter) / 2;
    }

    // The upper group under a force if the upper spring could not go solid; a tender stops at its travel.
    private static double Group(SpringSetData springs, double force) =>
        (springs.Tender is { } t ? Math.Min(force / t.Rate, t.Travel) : 0) + (springs.Upper is { } u ? force / u.Rate : 0);
}
