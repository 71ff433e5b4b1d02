namespace QuarterCar.Model.Terrain;

/// <summary>
/// A circle that rolls on a train of haversines, as long as it touches it tangentially. Seen from a crest: wheel centre at x, contact at u,
/// <c>u − R·sin θ = x</c> with <c>tan θ = y'(u)</c> (physics.md section 2: the maximum over ξ has no other inner point). Lengths in m.
/// </summary>
internal readonly record struct WaveContact(Wave Wave, double Radius)
{
    private const int MostSteps = 100;

    /// <summary>Whether a trough is too tight for the circle, so that it touches both flanks and never the bottom.</summary>
    public bool IsTight => Wave.TroughBend * Radius >= 1;

    /// <summary>
    /// Half the width about a trough that no circle touches: there the ground is more curved than the circle, so ξ at a tangent is no maximum.
    /// The curvature y''/(1 + y'²)^(3/2) falls from the trough to the inflection point: halving finds where it is 1/R.
    /// </summary>
    public double UntouchedHalfWidth()
    {
        var (tight, open) = (0.0, Wave.Length / 4);
        for (var i = 0; i < MostSteps && open - tight > 1e-16 * Wave.Length; i++)
        {
            var middle = (tight + open) / 2;
            (tight, open) = Widening(Wave.Length / 2 - middle) < 0 ? (middle, open) : (tight, middle);
        }
        return open;
    }

    /// <summary>Wheel centre that touches at <paramref name="u"/>.</summary>
    public double CentreAt(double u) => u - Radius * Sine(Wave.Slope(u));

    /// <summary>Contact for the wheel centre <paramref name="x"/> within the given range, in which the centre rises with the contact.</summary>
    public double ContactAt(double x, double low, double high)
    {
        var u = Math.Clamp(x, low, high);
        for (var step = 0; step < MostSteps; step++)
        {
            var miss = CentreAt(u) - x;
            if (miss > 0)
                high = u;
            else
                low = u;
            var next = u - miss / Widening(u);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - u) <= 1e-16 * Wave.Length || next == low || next == high)
                return next;
            u = next;
        }
        return u;
    }

    /// <summary>Road height above the crest's level, slope and second derivative with the contact at <paramref name="u"/>.</summary>
    public CurvePoint At(double u)
    {
        var slope = Wave.Slope(u);
        return new CurvePoint(Wave.Below(u) + Radius * Sunk(slope), slope, Wave.Bend(u) / Widening(u));
    }

    /// <summary>cos θ − 1 for tan θ: the centre stands R·cos θ above the contact.</summary>
    private static double Sunk(double slope)
    {
        // 1/√(1 + m²) − 1 loses its digits at small slopes, this form does not.
        var square = 1 + slope * slope;
        return -slope * slope / (square + Math.Sqrt(square));
    }

    /// <summary>sin θ for tan θ.</summary>
    public static double Sine(double slope) => slope / Math.Sqrt(1 + slope * slope);

    /// <summary>d(centre)/d(contact) = 1 − R·κ.</summary>
    private double Widening(double u)
    {
        var slope = Wave.Slope(u);
        var square = 1 + slope * slope;
        return 1 - Radius * Wave.Bend(u) / (square * Math.Sqrt(square));
    }
}
