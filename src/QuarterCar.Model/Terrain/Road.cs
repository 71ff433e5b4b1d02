using System.Runtime.CompilerServices;

namespace QuarterCar.Model.Terrain;

/// <summary>STUB until the road branch lands.</summary>
public readonly struct RoadSegment
{
    public readonly int Kind; public readonly double X0, A, B, R;
    public RoadSegment(int kind, double x0, double a, double b, double r) { Kind = kind; X0 = x0; A = a; B = b; R = r; }
    public bool IsLevel => Kind == 0 && B == 0;
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Evaluate(double s, out double h, out double slope)
    {
        if (Kind == 0) { h = A + B * (s - X0); slope = B; return; }
        double xi = X0 - s, c = Math.Sqrt(Math.Max(R * R - xi * xi, 1e-300)); h = A + c - R; slope = xi / c;
    }
}

/// <summary>STUB.</summary>
public sealed class Road
{
    private readonly RoadSegment[] _s;
    public Road(RoadSegment[] s, double[] b) { _s = s; Breaks = b; }
    public ReadOnlySpan<RoadSegment> Segments => _s;
    public double[] Breaks { get; }
    public int IndexAt(double s) { int i = 0; while (i < Breaks.Length && s >= Breaks[i]) i++; return i; }
    public bool Jumps(int i) => i < 0 && Breaks.Length < 0;
}
