using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.Studies;

/// <summary>The contacts that get a record: what touches, how deep, how hard (physics.md section 6).</summary>
internal enum ContactKind
{
    BumpStop,
    BottomOut,
    CoilBind,
    TopOut,
}

/// <summary>Gathers the contacts of a run while its steps are walked through in order.</summary>
internal sealed class ContactWork(RunTrack track)
{
    private static readonly (CornerEvent Touch, CornerEvent Release)[] s_events =
    [
        (CornerEvent.BumpStop, CornerEvent.BumpStopRelease),
        (CornerEvent.BottomOut, CornerEvent.BottomOutRelease),
        (CornerEvent.CoilBind, CornerEvent.CoilUnbind),
        (CornerEvent.TopOut, CornerEvent.TopOutRelease),
    ];

    private readonly Open?[] _open = new Open?[s_events.Length];
    private readonly List<(int Event, ContactFigures Figures)> _done = [];

    /// <summary>True while a contact of this kind that has a record is closed.</summary>
    public bool IsOpen(ContactKind kind) => _open[(int)kind] is not null;

    /// <summary>True while any is.</summary>
    public bool Any => _open[0] is not null || _open[1] is not null || _open[2] is not null || _open[3] is not null;

    /// <summary>Contacts finished so far with the index of their touch event.</summary>
    public IEnumerable<(int Event, ContactFigures Figures)> Done => _done;

    /// <summary>Penetration, its speed and the force of a contact, by its law.</summary>
    public static (double Depth, double Speed, double Force) Of(ContactKind kind, Corner corner, in FigureNode n)
    {
        double x = n.ShaftTravel, v = n.ShaftVelocity;
        switch (kind)
        {
            case ContactKind.BumpStop:
                double depth = corner.BumpStopCompression(n.WheelTravel), speed = corner.BumpStop!.OnAxle ? n.WheelVelocity : v;
                return (depth, speed, corner.BumpStop.Force(depth, speed));
            case ContactKind.BottomOut:
                return (x - corner.Stroke, v, corner.BottomOut.Force(x - corner.Stroke, v));
            case ContactKind.CoilBind:
                return (x + corner.Preload - corner.Stack.Breaks[^1].Compression, v, corner.Stack.Force(x + corner.Preload));
            default:
                return (-x, -v, corner.TopOut.Force(-x, -v));
        }
    }

    /// <summary>Takes an event: a touch opens a record, a release closes it.</summary>
    public void Take(int index, in NotedEvent e)
    {
        for (int k = 0; k < s_events.Length; k++)
        {
            if (e.Event == s_events[k].Touch)
            {
                double v = ShaftVelocity(e);
                ContactKind kind = (ContactKind)k;
                Corner corner = track.Corner;
                _open[k] = new Open(index, e.Time, v, (in FigureNode n) => Of(kind, corner, n).Force);
            }
            else if (e.Event == s_events[k].Release)
            {
                Close((ContactKind)k, e.Time);
            }
        }
    }

    /// <summary>Takes a node of a step, before the step; a weight of 0 is a step's end, which counts for peaks alone.</summary>
    /// <param name="node">The node.</param>
    /// <param name="weight">Its share of time, s.</param>
    /// <param name="place">Which of the step's <see cref="FigureWork.Places"/>.</param>
    public void Take(in FigureNode node, double weight, int place)
    {
        for (int k = 0; k < _open.Length; k++)
        {
            if (_open[k] is not { } open)
                continue;
            (double depth, double speed, double force) = Of((ContactKind)k, track.Corner, node);
            open.Depth = Math.Max(open.Depth, depth);
            open.Energy += weight * force * Math.Max(0, speed);
            open.Forces[place] = force;
        }
    }

    /// <summary>Takes the step whose nodes were taken.</summary>
    /// <param name="step">The step.</param>
    /// <param name="places">θ of its nodes.</param>
    public void Take(in DenseStep step, ReadOnlySpan<double> places)
    {
        foreach (Open? open in _open)
            open?.Force.Take(track, step, places, open.Forces, open.Quantity);
    }

    /// <summary>Closes what is still open at the end of the run: figures up to there.</summary>
    public void Finish(double end)
    {
        for (int k = 0; k < _open.Length; k++)
            Close((ContactKind)k, end);
    }

    private void Close(ContactKind kind, double time)
    {
        if (_open[(int)kind] is not { } open)
            return;
        string name = EventNames.Of(s_events[(int)kind].Touch);
        _done.Add((open.Event, new ContactFigures(
            name, open.Time, open.Time * track.Course.Speed, open.ShaftVelocity, Math.Max(0, open.Force.Value), open.Depth, time - open.Time, open.Energy)));
        _open[(int)kind] = null;
    }

    private double ShaftVelocity(in NotedEvent e)
    {
        return track.Corner.Ratio.Ratio(CornerState.WheelTravel(e.State)) * CornerState.WheelVelocity(e.State);
    }

    private sealed class Open(int index, double time, double shaftVelocity, FigureQuantity force)
    {
        public int Event { get; } = index;

        public double Time { get; } = time;

        public double ShaftVelocity { get; } = shaftVelocity;

        public double Depth { get; set; }

        public double Energy { get; set; }

        public double[] Forces { get; } = new double[FigureWork.Places];

        public FigureQuantity Quantity { get; } = force;

        public Peak Force = new();
    }
}
