namespace QuarterCar.Web.Serving;

/// <summary>Computes for a few pages at once; the others wait their turn, and whoever has gone meanwhile is not computed for.</summary>
internal sealed class Turns : IDisposable
{
    private readonly SemaphoreSlim _free = new(Math.Clamp(Environment.ProcessorCount, 2, 4));

    /// <summary>Does the work on a thread of its own turn.</summary>
    /// <param name="work">The work.</param>
    /// <param name="cancel">Stops waiting and working.</param>
    public async Task<T> Of<T>(Func<T> work, CancellationToken cancel)
    {
        await _free.WaitAsync(cancel);
        try
        {
            return await Task.Run(work, cancel);
        }
        finally
        {
            _free.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _free.Dispose();
}
