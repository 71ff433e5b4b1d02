namespace QuarterCar.Model.Springs;

/// <summary>
/// Series springs under one force, with the slider between upper group and lower spring
/// (physics.md section 3). Compression y in m from first contact, force in N, both positive in bump.
/// <code>
///  coil nut ──/\/\ tender /\/\── upper /\/\──[slider]──/\/\ lower /\/\── spring plate
///                                     stop nut ┘ holds the slider once the upper group is in by C*
/// </code>
/// The force over y is one straight piece between breaks, continuous and rising. Everything that stands, runs or picks
/// springs asks this one.
/// </summary>
public sealed class SpringStack
{
    /// <summary>Rate once nothing is left to compress, N/m (physics.md section 3).</summary>
    public const double SolidRate = 5e6;

    // A corner that stands on a break comes back from its balance with rounding: nearer than this it is on it, m.
    private const double SamePlace = 1e-12;

    private readonly StackSpring[] _upper;
    private readonly StackSpring _lower;
    private readonly StackBreak[] _breaks;

    private SpringStack(StackSpring[] upper, StackSpring lower, double? heldTravel)
    {
        _upper = upper;
        _lower = lower;
        HeldTravel = heldTravel;
        CrossoverForce = heldTravel is { } held ? ForceWhereGroupIs(held) : null;
        double allUpper = 0;
        foreach (StackSpring s in upper)
            allUpper = Math.Max(allUpper, s.BindForce);
        SolidForce = Math.Max(lower.BindForce, Math.Min(allUpper, CrossoverForce ?? double.PositiveInfinity));
        _breaks = MakeBreaks();
    }

    /// <summary>C*: the upper group's compression at which the slider meets the stop nut, m; null without a stop nut.</summary>
    public double? HeldTravel { get; }

    /// <summary>F*: the force there, N; null without a stop nut or where the upper group can never get in that far.</summary>
    public double? CrossoverForce { get; }

    /// <summary>The force at which nothing is left to compress, N.</summary>
    public double SolidForce { get; }

    /// <summary>Where the force over y bends, rising in y; the first is first contact at y = 0.</summary>
    public ReadOnlySpan<StackBreak> Breaks => _breaks;

    /// <summary>Springs from the coil nut down: the upper group, then the lower.</summary>
    public IEnumerable<StackSpring> Springs => [.. _upper, _lower];

    /// <summary>The lower spring's rate, N/m.</summary>
    public double LowerRate => _lower.Rate;

    /// <summary>The stack of a set of springs.</summary>
    /// <param name="set">The springs.</param>
    /// <param name="heldTravel">C*, m, not negative; null without a stop nut.</param>
    public static SpringStack Build(SpringSetData set, double? heldTravel)
    {
        var upper = new StackSpring[(set.Tender is null ? 0 : 1) + (set.Upper is null ? 0 : 1)];
        int n = 0;
        if (set.Tender is { } tender)
            upper[n++] = new StackSpring(SpringPosition.Tender, tender.Rate, tender.Travel);
        if (set.Upper is { } up)
            upper[n] = new StackSpring(SpringPosition.Upper, up.Rate, up.Travel);
        return new SpringStack(upper, new StackSpring(SpringPosition.Lower, set.Lower.Rate, set.Lower.Travel), upper.Length == 0 ? null : heldTravel);
    }

    /// <summary>Force at a compression, N; 0 while the springs are loose.</summary>
    /// <param name="y">Compression from first contact, m.</param>
    public double Force(double y)
    {
        if (y <= 0)
            return 0;
        ref readonly StackBreak b = ref _breaks[PieceAt(y)];
        return b.Force + b.RateAbove * (y - b.Compression);
    }

    /// <summary>Compression under a force, m: the inverse of <see cref="Force"/>.</summary>
    /// <param name="force">N, not negative.</param>
    public double Compression(double force)
    {
        int i = _breaks.Length - 1;
        while (i > 0 && force < _breaks[i].Force)
            i--;
        return _breaks[i].Compression + (force - _breaks[i].Force) / _breaks[i].RateAbove;
    }

    /// <summary>Rate at a compression, N/m; at a break the side toward droop.</summary>
    /// <param name="y">m.</param>
    /// <param name="resolution">Closer to a break than this counts as on it, m.</param>
    public double RateTowardDroop(double y, double resolution = 0)
    {
        int i = _breaks.Length - 1;
        while (i >= 0 && y <= _breaks[i].Compression + resolution)
            i--;
        return i < 0 ? 0 : _breaks[i].RateAbove;
    }

    /// <summary>Energy stored at a compression, J.</summary>
    /// <param name="y">m.</param>
    public double Energy(double y)
    {
        double sum = 0;
        for (int i = 0; i < _breaks.Length && y > _breaks[i].Compression; i++)
        {
            double to = i + 1 < _breaks.Length ? Math.Min(y, _breaks[i + 1].Compression) : y, d = to - _breaks[i].Compression;
            sum += d * (_breaks[i].Force + 0.5 * _breaks[i].RateAbove * d);
        }

        return sum;
    }

    /// <summary>The upper group's compression under a force, m: stops at solid and at the stop nut.</summary>
    public double GroupCompression(double force)
    {
        double free = FreeGroupCompression(force);
        return CrossoverForce is { } f && force >= f ? HeldTravel!.Value : free;
    }

    /// <summary>The upper group's compression under a force were there no stop nut, m.</summary>
    public double FreeGroupCompression(double force)
    {
        double sum = 0;
        foreach (StackSpring s in _upper)
            sum += s.Compression(force);
        return sum;
    }

    /// <summary>One spring's compression under the stack's force, m; stops at solid, and for the upper group at the stop nut.</summary>
    public double CompressionOf(StackSpring spring, double force) =>
        spring.Compression(spring.Position != SpringPosition.Lower && CrossoverForce is { } f ? Math.Min(force, f) : force);

    /// <summary>The lower spring's compression under a force, m; stops at solid.</summary>
    public double LowerCompression(double force) => _lower.Compression(force);

    /// <summary>True where the slider stands on the stop nut.</summary>
    /// <param name="y">m.</param>
    public bool OnStopNut(double y) => CrossoverForce is { } f && y + SamePlace >= CompressionAt(f);

    /// <summary>What the stack is doing at a compression.</summary>
    /// <param name="y">m.</param>
    public RateRegion Region(double y)
    {
        if (y < 0)
            return RateRegion.Loose;
        return _breaks[PieceAt(y + SamePlace)].RegionAbove;
    }

    /// <summary>Force on the coil nut and on the stop nut under the stack's force, N: while the slider is on the nut it carries what lies above the crossover force.</summary>
    public (double CoilNut, double StopNut) NutForces(double force) =>
        CrossoverForce is { } f && force > f ? (f, force - f) : (force, 0);

    /// <summary>Rate of the springs that are not solid under a force, the stop nut left out of account, N/m; at a kink the side toward droop.</summary>
    public double FreeSeriesRate(double force)
    {
        // A load that presses a spring just solid is worked out anew on each way to it: the last bits must not choose the side.
        const double sameForce = 1e-12;
        double flexibility = 0;
        foreach (StackSpring s in Springs)
            flexibility += force <= s.BindForce * (1 + sameForce) ? 1 / s.Rate : 0;
        return flexibility > 0 ? 1 / flexibility : SolidRate;
    }

    /// <summary>The travel that upper and lower spring would lack or have left at a compression if neither could go solid, m (physics.md section 3): negative where it binds before.</summary>
    /// <param name="y">Compression of the stack at full bump, m.</param>
    public double BindClearance(SpringPosition position, double y)
    {
        // Each entry: what the spring would be compressed by with unlimited travel of upper and lower.
        StackSpring[] unlimited = [.. _upper.Select(s => s.Position == SpringPosition.Tender ? s : s with { Travel = double.PositiveInfinity })];
        var soft = new SpringStack(unlimited, _lower with { Travel = double.PositiveInfinity }, HeldTravel);
        double force = soft.Force(y);
        StackSpring spring = Springs.Single(s => s.Position == position), softSpring = soft.Springs.Single(s => s.Position == position);
        return spring.Travel - soft.CompressionOf(softSpring, force);
    }

    private double CompressionAt(double force) => GroupCompression(force) + _lower.Compression(force);

    private int PieceAt(double y)
    {
        int i = _breaks.Length - 1;
        while (i > 0 && y < _breaks[i].Compression)
            i--;
        return i;
    }

    private double? ForceWhereGroupIs(double held)
    {
        // The group's compression over force is straight between the forces at which one of its springs goes solid.
        double from = 0, at = 0;
        foreach (double bind in _upper.Select(s => s.BindForce).Order())
        {
            double next = double.IsInfinity(bind) ? double.PositiveInfinity : FreeGroupCompression(bind);
            if (held < next)
                return from + (held - at) / _upper.Sum(s => from < s.BindForce ? 1 / s.Rate : 0);
            (from, at) = (bind, next);
        }

        return null;
    }

    private StackBreak[] MakeBreaks()
    {
        Span<double> forces = stackalloc double[6];
        int n = 0;
        forces[n++] = 0;
        foreach (StackSpring s in _upper)
        {
            if (s.BindForce <= (CrossoverForce ?? double.PositiveInfinity))
                Insert(forces, ref n, s.BindForce);
        }

        Insert(forces, ref n, _lower.BindForce);
        if (CrossoverForce is { } f)
            Insert(forces, ref n, f);
        while (n > 1 && (double.IsInfinity(forces[n - 1]) || forces[n - 1] > SolidForce))
            n--;
        var breaks = new StackBreak[n];
        for (int i = 0; i < n; i++)
            breaks[i] = BreakAt(forces[i]);
        return breaks;
    }

    private static void Insert(Span<double> sorted, ref int n, double value)
    {
        int i = n;
        while (i > 0 && sorted[i - 1] > value)
            i--;
        if (i > 0 && sorted[i - 1] == value)
            return;
        for (int k = n; k > i; k--)
            sorted[k] = sorted[k - 1];
        sorted[i] = value;
        n++;
    }

    private StackBreak BreakAt(double force)
    {
        bool held = force >= CrossoverForce, solid = force >= SolidForce, bound = force >= _lower.BindForce, tender = false;
        double flexibility = force < _lower.BindForce ? 1 / _lower.Rate : 0;
        StackEvents events = force == _lower.BindForce ? StackEvents.LowerBind : StackEvents.None;
        foreach (StackSpring s in _upper)
        {
            bool open = force < s.BindForce;
            flexibility += open && !held ? 1 / s.Rate : 0;
            bound |= s.Position == SpringPosition.Upper && !open;
            tender |= s.Position == SpringPosition.Tender && open;
            if (force == s.BindForce && !(force > CrossoverForce))
                events |= s.Position == SpringPosition.Upper ? StackEvents.UpperBind : StackEvents.TenderSolid;
        }

        events |= force == CrossoverForce ? StackEvents.Crossover : 0;
        events |= force == SolidForce ? StackEvents.CoilBind : 0;
        RateRegion region = bound ? RateRegion.Bound : held ? RateRegion.Secondary : tender ? RateRegion.Tender : RateRegion.Primary;
        return new StackBreak(CompressionAt(force), force, solid ? SolidRate : 1 / flexibility, region, held, events);
    }
}

/// <summary>Where a spring sits in the stack.</summary>
public enum SpringPosition
{
    /// <summary>Topmost, soft, made to go solid.</summary>
    Tender,

    /// <summary>Between coil nut and slider.</summary>
    Upper,

    /// <summary>Between slider and spring plate.</summary>
    Lower,
}

/// <summary>One spring as the stack computes with it.</summary>
/// <param name="Position">Where.</param>
/// <param name="Rate">N/m.</param>
/// <param name="Travel">From free to solid, m.</param>
public readonly record struct StackSpring(SpringPosition Position, double Rate, double Travel)
{
    /// <summary>Force at which its coils bind, N.</summary>
    public double BindForce => Rate * Travel;

    /// <summary>Compression under a force, m; stops at solid.</summary>
    public double Compression(double force) => Math.Min(force / Rate, Travel);
}

/// <summary>What happens at a break of the stack on the way in; on the way out the opposite.</summary>
[Flags]
public enum StackEvents
{
    /// <summary>First contact.</summary>
    None = 0,

    /// <summary>Slider meets stop nut.</summary>
    Crossover = 1,

    /// <summary>Tender solid.</summary>
    TenderSolid = 2,

    /// <summary>Upper spring solid.</summary>
    UpperBind = 4,

    /// <summary>Lower spring solid.</summary>
    LowerBind = 8,

    /// <summary>Nothing left to compress.</summary>
    CoilBind = 16,
}

/// <summary>A break of the stack's force over compression.</summary>
/// <param name="Compression">y, m.</param>
/// <param name="Force">N.</param>
/// <param name="RateAbove">Rate from here on, N/m.</param>
/// <param name="RegionAbove">What the stack does from here on.</param>
/// <param name="HeldAbove">True where the slider is on the stop nut from here on.</param>
/// <param name="Events">What happens here.</param>
public readonly record struct StackBreak(double Compression, double Force, double RateAbove, RateRegion RegionAbove, bool HeldAbove, StackEvents Events);
