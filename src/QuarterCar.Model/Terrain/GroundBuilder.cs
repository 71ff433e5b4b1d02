using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>Lays terrain pieces one after another (physics.md section 2); has one owner and is dropped once the ground stands.</summary>
internal sealed class GroundBuilder
{
    // Slopes of two lines that a file or a unit means to be one differ by rounding of heights and distances: a few last digits.
    private const double SlopeRounding = 16 * 2.220446049250313e-16;

    private readonly List<GroundPart> _parts =
        [new GroundPart { Start = double.NegativeInfinity, End = 0, Piece = -1 }];

    private readonly List<GroundStep> _steps = [];
    private readonly CancellationToken _cancel;
    private double _s;
    private double _y;
    private double _step;
    private int? _stepRow;
    private int _stepPiece;
    private int _piece;

    private GroundBuilder(CancellationToken cancel) => _cancel = cancel;

    public static Ground Lay(ImmutableArray<TerrainPiece> pieces, CancellationToken cancel)
    {
        var builder = new GroundBuilder(cancel);
        foreach (var piece in pieces)
        {
            cancel.ThrowIfCancellationRequested();
            builder.Add(piece);
            builder._piece++;
        }
        var length = builder._s;
        builder._piece = -1;
        builder.Line(double.PositiveInfinity, 0);
        return new Ground([.. builder._parts], [.. builder._steps], length);
    }

    private void Add(TerrainPiece piece)
    {
        switch (piece)
        {
            case FlatPiece flat: Line(flat.Length, 0); break;
            case StepPiece step: Step(step.Height, null); break;
            case RampPiece ramp: Line(ramp.Length, ramp.Rise); break;
            case HaversinePiece wave: Haversines(wave); break;
            case RandomPiece random: Samples(random); break;
            case ProfilePiece profile: Profile(profile); break;
            default: throw new ArgumentException($"unknown terrain piece {piece.GetType().Name}", nameof(piece));
        }
    }

    private void Step(double height, int? row)
    {
        _step += height;
        _stepPiece = _piece;
        _stepRow = row;
    }

    private void Line(double length, double rise)
    {
        LineTo(_s + length, _y + _step + rise);
    }

    private void LineTo(double end, double endHeight, int? row = null)
    {
        if (IsNoLength(end))
        {
            Step(endHeight - (_y + _step), row);
            return;
        }
        var stepped = TakeStep();
        var slope = double.IsInfinity(end) ? 0 : (endHeight - _y) / (end - _s);
        if (!stepped && GoesOn(_parts[^1], end, endHeight, slope))
        {
            var last = _parts[^1];
            var joined = last.LineSlope == 0 && slope == 0 ? 0 : (endHeight - last.AnchorHeight) / (end - last.Anchor);
            _parts[^1] = last with { End = end, EndHeight = endHeight, LineSlope = joined };
        }
        else
        {
            Push(new GroundPart { Start = _s, End = end, StartHeight = _y, EndHeight = endHeight, Anchor = _s, AnchorHeight = _y, LineSlope = slope, Piece = _piece });
        }
        (_s, _y) = (end, endHeight);
    }

    // Rounding of distances, not a length: two grids that a program joined give 0.3 and 0.30000000000000004 for one place, and after ten feet of flat both are
    // the same number. Twice what a road takes for one break, which may stand a wheel's radius further on, where rounding is twice as coarse.
    private bool IsNoLength(double end) => end - _s < 2 * SegmentList.ShortestLength(end);

    /// <summary>Whether the new line is the last one carried on, so that no break stands where nothing changes.</summary>
    private bool GoesOn(in GroundPart last, double end, double endHeight, double slope)
    {
        if (last.Wave is not null)
            return false;
        if (last.LineSlope == 0 || slope == 0)
            return last.LineSlope == slope;
        var shorter = Math.Min(end - _s, last.End - last.Start);
        var doubt = SlopeRounding * ((Math.Abs(_y) + Math.Abs(endHeight) + Math.Abs(slope) * end) / shorter);
        return Math.Abs(slope - last.LineSlope) <= doubt;
    }

    private void Haversines(HaversinePiece piece)
    {
        var end = _s + piece.Spacing * piece.Count;
        if (piece.Height == 0 || IsNoLength(end))
        {
            Line(piece.Spacing * piece.Count, 0);
            return;
        }
        TakeStep();
        var up = piece.Height > 0;
        var wave = new Wave(up ? _s + piece.Spacing / 2 : _s, up ? _y + piece.Height : _y, Math.Abs(piece.Height), piece.Spacing);
        Push(new GroundPart { Start = _s, End = end, StartHeight = _y, EndHeight = _y, Wave = wave, Piece = _piece });
        _s = end;
    }

    private void Samples(RandomPiece piece)
    {
        var (s0, y0) = (_s, _y + _step);
        var heights = RandomCourse.Heights(piece.Class, piece.Length, piece.Seed, _cancel);
        for (var i = 1; i < heights.Length; i++)
            LineTo(i == heights.Length - 1 ? s0 + piece.Length : s0 + i * RandomCourse.Spacing, y0 + heights[i]);
    }

    private void Profile(ProfilePiece piece)
    {
        var (s0, y0) = (_s, _y + _step);
        var points = piece.Points;
        for (var i = 1; i < points.Length; i++)
        {
            var width = points[i].At - points[i - 1].At;
            if (!(width >= 0))
                throw new ArgumentException($"{piece.File}: distances fall at row {i}; the reader must refuse that", nameof(piece));
            LineTo(s0 + (points[i].At - points[0].At), y0 + (points[i].Value - points[0].Value), i);
        }
    }

    private bool TakeStep()
    {
        if (_step == 0)
            return false;
        _steps.Add(new GroundStep(_s, _y, _y + _step, _stepPiece, _stepRow));
        _y += _step;
        _step = 0;
        return true;
    }

    private void Push(GroundPart part)
    {
        // The level ground before the course ends where the first other part starts.
        if (_parts.Count == 1)
            _parts[0] = _parts[0] with { End = part.Start };
        _parts.Add(part);
    }
}
