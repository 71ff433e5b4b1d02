using QuarterCar.Model;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Names of the parts to the right of a coilover, each with a line to its part, set apart where they would touch.</summary>
internal sealed class PartLabels(Pen pen, CoiloverPicture picture, double edge)
{
    private const double Apart = 4, Indent = 4.5;

    /// <summary>Draws them.</summary>
    public void Draw(CoiloverData data, PartSizes sizes)
    {
        CoiloverShape shape = picture.Shape;
        List<(string Words, double At)> labels = [("coil nut", shape.CoilNut + CoiloverPicture.Nut / 2), ("spring plate", -0.005)];
        labels.AddRange(shape.Springs.Select(s => (s.Words, s.From + 0.6 * (s.To - s.From))));
        if (shape.Slider is { } slider) labels.Add((data.Springs.Upper is null ? "spacer" : "slider", slider + sizes.Slider / 2));
        if (shape.StopNut is { } stop) labels.Add(("stop nut", stop + CoiloverPicture.Nut / 2));
        if (data.BumpStop is { OnAxle: false } bump) labels.Add(("bump stop", bump.Length / 2));
        labels.Add(("shaft", data.BumpStop is { OnAxle: false } b ? (Math.Min(b.Length, shape.Showing) + shape.Showing) / 2 : shape.Showing / 2));
        labels.Add(("body", shape.CoilNut + 1.8 * CoiloverPicture.Nut));
        double last = double.NegativeInfinity;
        foreach ((string words, double at) in labels.OrderByDescending(l => l.At))
        {
            double part = picture.Y(at), y = Math.Max(part, last + Apart);
            last = y;
            pen.Line(edge + (words is "body" or "shaft" or "bump stop" or "stop nut" ? -picture.Half : 0), part, edge + 1, part, "lead");
            pen.Line(edge + 1, part, edge + Indent - 0.5, y, "lead");
            pen.Text(edge + Indent, y + 1, "start", words);
        }
    }
}
