namespace QuarterCar.Model.Terrain;

/// <summary>
/// Cuts ground into elements on which a circle has one contact at most. Lines and open haversines are whole; where a trough is tighter than the
/// circle, its middle is left out: no maximum can lie there, and its ends belong to the flanks. A corner where the ground itself begins or ends in
/// such a trough stays as a single point: beyond it there may be a drop.
/// </summary>
internal static class CircleElements
{
    public static IEnumerable<CircleElement> Of(GroundPart part, double radius)
    {
        if (part.Wave is not { } wave || new WaveContact(wave, radius) is not { IsTight: true } contact)
        {
            yield return new CircleElement(part, part.Start, part.End, radius, part.Wave?.Crest ?? 0);
            yield break;
        }
        var reach = wave.Length / 2 - contact.UntouchedHalfWidth();
        var count = (int)Math.Round((part.End - part.Start) / wave.Length);
        var dips = wave.Crest == part.Start; // a dip starts at a crest, a bump half a length before one
        if (!dips)
            yield return new CircleElement(part, part.Start, part.Start, radius, part.Start);
        for (var i = 0; i < (dips ? count + 1 : count); i++)
        {
            var crest = wave.Crest + i * wave.Length;
            var from = dips && i == 0 ? part.Start : crest - reach;
            var to = dips && i == count ? part.End : crest + reach;
            yield return new CircleElement(part, from, to, radius, crest);
        }
        if (!dips)
            yield return new CircleElement(part, part.End, part.End, radius, part.End);
    }
}
