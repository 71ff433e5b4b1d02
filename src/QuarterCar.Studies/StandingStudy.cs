using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>What `check` asks of a scenario: the corner at rest.</summary>
public static class StandingStudy
{
    private static readonly double[] s_dampingSpeeds = [0.1, 0.5, 1.5];

    /// <summary>The standing result.</summary>
    /// <param name="scenario">What is asked.</param>
    /// <param name="cases">Its load cases, each applied.</param>
    /// <exception cref="CornerException">The words describe no corner that can stand.</exception>
    public static StandingResult Of(Scenario scenario, IEnumerable<(string Name, Scenario Scenario)>? cases = null)
    {
        StandingWarnings.Subject subject = Stand(scenario);
        Corner corner = subject.Corner;
        List<(string Name, StandingWarnings.Subject Subject)> stood = [.. (cases ?? []).Select(c => (c.Name, Stand(c.Scenario)))];
        return new StandingResult(
            scenario,
            corner,
            subject.Figures,
            subject.Springs,
            Damping(corner, subject.Figures),
            subject.Fit,
            [.. stood.Select(c => new CaseStanding(c.Name, c.Subject.Figures))],
            StandingCurve.Of(corner),
            [.. scenario.Warnings, .. StandingWarnings.Of(subject, stood)]);
    }

    private static StandingWarnings.Subject Stand(Scenario scenario)
    {
        var corner = Corner.Build(scenario.Corner);
        return new(corner, StandingWork.Figures(corner), [.. StandingWork.Springs(corner)], FitWork.Of(corner), scenario.Units);
    }

    /// <summary>The corner and its figures alone: what a study of many setups asks.</summary>
    /// <param name="scenario">What is asked.</param>
    /// <exception cref="CornerException">The words describe no corner that can stand.</exception>
    public static StandingResult FiguresOf(Scenario scenario)
    {
        var corner = Corner.Build(scenario.Corner);
        return new StandingResult(scenario, corner, StandingWork.Figures(corner), [], [], null, [], [], []);
    }

    // ζ = c·r²/(2·√(k_r·m_s)), k_r = r²·(k_region + k_gas), all at ride height (physics.md section 6).
    private static ImmutableArray<DampingRatio> Damping(Corner corner, StandingFigures figures)
    {
        if (corner.Damper is not { } damper)
            return [];
        double x = figures.ShaftTravel, r = corner.Ratio.Ratio(figures.WheelTravel), gas = corner.Gas?.MovingRate(x, x) ?? 0;
        (double compression, double rebound) = damper.Factors(x);
        var rows = ImmutableArray.CreateBuilder<DampingRatio>();
        Add("primary", figures.PrimaryRate);
        if (figures.SecondaryRate is { } secondary)
            Add("secondary", secondary);
        return rows.ToImmutable();

        void Add(string region, double rate)
        {
            double critical = 2 * Math.Sqrt(r * r * (rate + gas) * corner.SprungMass);
            foreach ((string direction, double sign, double factor) in new[] { ("compression", 1.0, compression), ("rebound", -1.0, rebound) })
            {
                foreach (double v in s_dampingSpeeds)
                    rows.Add(new DampingRatio(region, direction, v, Math.Abs(damper.Lines.At(sign * v)) * factor / v * r * r / critical));
            }
        }
    }
}
