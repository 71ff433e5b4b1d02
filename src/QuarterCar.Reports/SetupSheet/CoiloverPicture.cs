using QuarterCar.Model;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Draws one coilover to scale, cut open: coils as sections of wire, the body whole. Places are mm on paper.</summary>
/// <param name="pen">Draws.</param>
/// <param name="shape">Where the parts are.</param>
/// <param name="sizes">How wide they are.</param>
/// <param name="scale">mm on paper a metre.</param>
/// <param name="centre">x of the centre line.</param>
/// <param name="plate">y of the spring plate's upper face.</param>
internal sealed class CoiloverPicture(Pen pen, CoiloverShape shape, PartSizes sizes, double scale, double centre, double plate)
{
    /// <summary>Height of a nut, m; also how much body is drawn above the coil nut at least.</summary>
    public const double Nut = 0.014;

    /// <summary>From the plate down to the eye's lower edge, m.</summary>
    public const double Foot = 0.062;

    private const int LeastCoils = 4, MostCoils = 16;

    /// <summary>Half of the width over the coils, mm.</summary>
    public double Half => Outer / 2 * scale;

    /// <summary>Where the parts are.</summary>
    public CoiloverShape Shape => shape;

    private double Outer => sizes.Inner + 2 * sizes.Wire;

    /// <summary>A height above the plate on paper.</summary>
    public double Y(double height) => plate - height * scale;

    /// <summary>Draws it.</summary>
    /// <param name="data">For bump stop and thread.</param>
    /// <param name="bodyAbove">Body above the coil nut, m.</param>
    public void Draw(CoiloverData data, double bodyAbove)
    {
        double w = scale * sizes.Body, eye = 0.016 * scale;
        foreach (SpringShape spring in shape.Springs) BackCoils(spring);
        pen.Box(centre, sizes.Shaft * scale, Y(shape.Showing), plate, "shaft");
        if (data.BumpStop is { OnAxle: false } bump) pen.Box(centre, 0.62 * w, Y(bump.Length), plate, "bump");
        double top = Y(shape.CoilNut + bodyAbove);
        pen.Box(centre, w, top, Y(shape.Showing), "body");
        Thread(data, w);
        pen.Circle(centre, top - eye * 0.6, eye, "body");
        pen.Circle(centre, top - eye * 0.6, eye * 0.45, "hole");
        pen.Box(centre, Outer * scale, plate, Y(-0.010), "plate");
        pen.Box(centre, sizes.Shaft * scale, Y(-0.010), Y(-0.030), "shaft");
        pen.Circle(centre, Y(-0.042), eye, "body");
        pen.Circle(centre, Y(-0.042), eye * 0.45, "hole");
        if (shape.Slider is { } slider) pen.Box(centre, Outer * scale, Y(slider + sizes.Slider), Y(slider), "slider");
        if (shape.StopNut is { } stop) pen.Box(centre, (sizes.Inner + sizes.Body) / 2 * scale + 0.8, Y(stop + Nut), Y(stop), "nut");
        pen.Box(centre, Outer * scale, Y(shape.CoilNut + Nut), Y(shape.CoilNut), "nut");
        foreach (SpringShape spring in shape.Springs) FrontCoils(spring);
    }

    // The thread for the coil nut, where its ends are known.
    private void Thread(CoiloverData data, double w)
    {
        if (data.Body is not { Thread: { } thread, SeatLength: { } seat }) return;
        double nutDown = data.Preload - (sizes.StackFree(data.Springs) - seat), from = shape.CoilNut + nutDown, to = from - thread;
        for (double y = Y(from); y < Y(to); y += 0.9)
        {
            pen.Line(centre - w / 2, y, centre - w / 2 + 1, y, "hair");
            pen.Line(centre + w / 2 - 1, y, centre + w / 2, y, "hair");
        }
    }

    private void BackCoils(SpringShape spring)
    {
        (int n, _, double first, double pitch) = Coils(spring);
        for (int i = 0; i < n - 1; i++)
            pen.Line(Left, first - i * pitch, Right, first - (i + 1) * pitch, "coil");
        pen.Line(Left, first, Right, first, "coil");
        pen.Line(Left, first - (n - 1) * pitch, Right, first - (n - 1) * pitch, "coil");
    }

    private void FrontCoils(SpringShape spring)
    {
        (int n, double radius, double first, double pitch) = Coils(spring);
        for (int i = 0; i < n; i++)
        {
            pen.Circle(Left, first - i * pitch, radius, "wire");
            pen.Circle(Right, first - i * pitch, radius, "wire");
        }
    }

    private double Left => centre - (sizes.Inner + sizes.Wire) / 2 * scale;

    private double Right => centre + (sizes.Inner + sizes.Wire) / 2 * scale;

    // As many coils as the solid length holds of the wire; the ends lie flat.
    private (int Count, double Radius, double First, double Pitch) Coils(SpringShape spring)
    {
        double wire = spring.Data.WireDiameter ?? sizes.Wire;
        int n = Math.Clamp((int)Math.Round(spring.Data.SolidLength / wire), LeastCoils, MostCoils);
        wire = Math.Min(wire, (spring.To - spring.From) / n);
        double first = Y(spring.From + wire / 2), last = Y(spring.To - wire / 2);
        return (n, wire / 2 * scale, first, (first - last) / (n - 1));
    }
}
