using System.Text;

namespace QuarterCar;

/// <summary>What a writer of JSON writes, as a text.</summary>
internal static class JsonText
{
    /// <summary>The text.</summary>
    public static string Of(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
