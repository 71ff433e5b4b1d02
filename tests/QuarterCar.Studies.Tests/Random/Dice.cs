using System.Globalization;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>Numbers from 0 to 1 handed out one after another and turned into choices. A small number leaves a thing out, so that a case that shrinks also loses its parts.</summary>
internal sealed class Dice(double[] faces)
{
    private int _next;

    /// <summary>True for the given share of cases.</summary>
    public bool Chance(double share) => Next() > 1 - share || share >= 1;

    public double Between(double from, double to) => Short(from + (to - from) * Next());

    /// <summary>Spread evenly over the powers of ten.</summary>
    public double Log(double from, double to) => Short(from * Math.Pow(to / from, Next()));

    public T Of<T>(params T[] choices) => choices[Math.Min((int)(Next() * choices.Length), choices.Length - 1)];

    // Four figures: a kept case stays readable.
    private static double Short(double value) => double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private double Next() => faces[_next++ % faces.Length];
}
