using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Scenarios.SpringLists;

/// <summary>The lists that ship, springs and tenders: invented, in even steps, to try things out with; nobody makes these very springs, and they are not to be bought from.</summary>
public static class InventedSprings
{
    /// <summary>What a person types for them, and what messages call them.</summary>
    public const string Name = "invented";

    /// <summary>Said wherever springs of these lists are shown.</summary>
    public const string Caution =
        "The springs come from the list that ships: invented, in even steps, computed by spring formulas. Do not buy from it: give a maker's list with --springs.";

    private const double Inch = 0.0254;

    // Inner diameters that the lists hold; a spring is given half an inch over the body (common practice, no source).
    private static readonly ImmutableArray<double> _inner = [2.5 * Inch, 3.0 * Inch, 3.75 * Inch];

    private const double OverBody = 0.5 * Inch;

    private static readonly Lazy<SpringList> s_springs = new(() => Load("invented-springs.csv")), s_tenders = new(() => Load("invented-tenders.csv"));

    /// <summary>Inner diameter of the springs for a body, m: one size of slider carries one inner diameter.</summary>
    /// <param name="body">Diameter of the body, m; null: 2.5 in is taken.</param>
    public static double InnerFor(double? body) => _inner.FirstOrDefault(i => i - (body ?? 2.5 * Inch) >= OverBody - 1e-6, _inner[^1]);

    /// <summary>Every spring, all inner diameters.</summary>
    public static SpringList Springs() => s_springs.Value;

    /// <summary>Every tender, all inner diameters.</summary>
    public static SpringList Tenders() => s_tenders.Value;

    /// <summary>The text of a shipped list.</summary>
    public static Stream Open(string file) => typeof(InventedSprings).Assembly.GetManifestResourceStream(file) ?? throw new InvalidOperationException($"{file} is not in the program");

    /// <summary>True for a spring whose rate and lengths are those of one of the lists, but for the digits that a scenario is written with.</summary>
    public static bool Has(SpringData spring) => Springs().Rows.Concat(Tenders().Rows).Any(r => Same(r.Spring.Rate, spring.Rate) && Same(r.Spring.FreeLength, spring.FreeLength) && Same(r.Spring.SolidLength, spring.SolidLength));

    private static bool Same(double listed, double written) => Math.Abs(listed - written) <= 1e-4 * listed;

    private static SpringList Load(string file)
    {
        using var stream = Open(file);
        var problems = new ProblemList();
        return SpringListReader.Read(stream, file, problems) ?? throw new InvalidOperationException(problems.ToImmutable()[0].ToString());
    }
}
