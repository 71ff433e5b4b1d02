namespace QuarterCar.Web.State;

/// <summary>The last few things that were made, by the text that they were made of. Safe to ask from many threads; two that ask for one new thing at once may both make it.</summary>
/// <typeparam name="T">What is made.</typeparam>
internal sealed class LastFew<T>
{
    private const int Most = 8;

    private readonly Lock _lock = new();
    private readonly LinkedList<(string Key, T Made)> _known = new();

    /// <summary>The thing of a key: a remembered one, or made now.</summary>
    public T Of(string key, Func<T> make)
    {
        lock (_lock)
        {
            for (var at = _known.First; at is not null; at = at.Next)
            {
                if (at.Value.Key != key) continue;
                _known.Remove(at);
                _known.AddFirst(at);
                return at.Value.Made;
            }
        }

        T made = make();
        lock (_lock)
        {
            _known.AddFirst((key, made));
            if (_known.Count > Most) _known.RemoveLast();
        }

        return made;
    }
}
