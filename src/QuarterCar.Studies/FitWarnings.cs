using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on how the springs fit the body: assembly, thread, diameter.</summary>
internal static class FitWarnings
{
    // Differences below this are rounding, m.
    private const double Same = 1e-9;

    /// <summary>The remarks.</summary>
    public static IEnumerable<Warning> Of(StandingWarnings.Subject s)
    {
        if (s.Fit is not { } fit)
            yield break;
        if (fit.LeastPreload is { } least && fit.NutFromTop < -Same)
            yield return least > 0 ? BelowLeast(s, least, fit.AssemblyForce!.Value, fit.AssemblyEnergy!.Value) : AboveThread(s, -fit.NutFromTop.Value);
        if (fit.ThreadLeft < -Same)
            yield return new("beyond_thread", $"The coil nut would stand {s.Length(-fit.ThreadLeft.Value)} past the end of its thread: use less preload or longer springs.");
        if (OverBody(s) is { } tight)
            yield return tight;
    }

    private static Warning BelowLeast(StandingWarnings.Subject s, double least, double force, double energy) => new(
        "below_least_preload",
        $"The springs go on the body only with at least {s.Length(least)} of preload, not {s.Length(s.Corner.Preload)}: set that much or fit shorter springs, and assemble with a compressor rated for {s.Force(force)}, which then holds {Words.Energy(energy, s.Units)}.");

    // The stack is shorter than the seat: negative preload that the thread cannot give either.
    private static Warning AboveThread(StandingWarnings.Subject s, double above) => new(
        "below_least_preload",
        $"The coil nut would stand {s.Length(above)} above the top of its thread: raise the preload by that much or fit shorter springs.");

    private static Warning? OverBody(StandingWarnings.Subject s)
    {
        if (s.Body?.Diameter is not { } body)
            return null;
        string[] tight = [.. s.Coilover.Springs.Placed.Where(p => p.Spring.CoilInner <= body).Select(p => $"the {p.Place} spring ({s.Length(p.Spring.CoilInner!.Value)} inside)")];
        if (tight.Length == 0)
            return null;
        string who = string.Join(" and ", tight), does = tight.Length == 1 ? "does" : "do";
        return new("spring_over_body", $"{char.ToUpperInvariant(who[0])}{who[1..]} {does} not go over the body of {s.Length(body)}: fit springs with a larger inner diameter.");
    }
}
