using System.Globalization;

namespace QuarterCar.TestKit;

/// <summary>How far a number may be from the one expected, and why.</summary>
/// <param name="Allowed">Largest error: absolute, or a share of the expected number where made by <see cref="Share"/>.</param>
/// <param name="Because">Where the allowed error comes from.</param>
public sealed record Tolerance(double Allowed, string Because)
{
    private bool Relative { get; init; }

    /// <summary>An allowed error as a share of the expected number.</summary>
    public static Tolerance Share(double share, string because) => new(share, because) { Relative = true };

    /// <summary>True where the number is close enough; never for NaN.</summary>
    public bool Covers(double expected, double actual) => Math.Abs(actual - expected) <= Limit(expected);

    /// <summary>Throws where the number is too far off.</summary>
    /// <param name="expected">What someone else worked out.</param>
    /// <param name="actual">What came out.</param>
    /// <param name="what">Named in the message.</param>
    public void Holds(double expected, double actual, string what = "")
    {
        if (!Covers(expected, actual))
            throw new ToleranceException(Message(expected, actual, what));
    }

    private double Limit(double expected) => Relative ? Allowed * Math.Abs(expected) : Allowed;

    private string Message(double expected, double actual, string what) => string.Create(
        CultureInfo.InvariantCulture,
        $"{what}{(what.Length > 0 ? ": " : "")}expected {expected:R}, got {actual:R}, off by {actual - expected:G3}; allowed {Limit(expected):G3}, because {Because}");
}

/// <summary>A number was further off than its tolerance.</summary>
public sealed class ToleranceException(string message) : Exception(message);
