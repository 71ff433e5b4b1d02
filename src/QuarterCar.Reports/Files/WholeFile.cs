using System.Security.Cryptography;
using System.Text;

namespace QuarterCar.Reports.Files;

/// <summary>One file that comes whole or not at all: written beside its place under a hidden name, put on the disk, and renamed. What a killed run left under the hidden name goes with the next one for the same file.</summary>
public static class WholeFile
{
    // Lock and part of one file are told apart from others by a hash of its name, which may be as long as a name can be.
    private const int HashLength = 16;

    /// <summary>Writes it.</summary>
    /// <param name="file">The file, in a folder that is there; a link is followed.</param>
    /// <param name="content">What comes in.</param>
    /// <param name="replace">True to replace a file that is there; false to fail.</param>
    /// <exception cref="IOException">It could not be written, or another run is writing it; what was there before still is.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; likewise.</exception>
    public static void Write(string file, byte[] content, bool replace)
    {
        string target = Target(file);
        WriteLock? taken = WriteLock.Take(LockOf(target), ResultFolder.Patience);
        if (taken is null) throw new IOException($"another run of quartercar is writing '{file}'");
        InHand.Whole(() =>
        {
            try
            {
                using (taken) Write(Hidden(HiddenNames.Part, target), target, content, replace);
            }
            catch (IOException e) when (IoWords.IsFull(e))
            {
                throw new IOException($"{file}: {IoWords.Of(e)}", e.HResult);
            }
        });
    }

    /// <summary>Where a file really lies: its full path, or that of what a link leads to.</summary>
    public static string Target(string file) =>
        new FileInfo(file).LinkTarget is null ? Path.GetFullPath(file) : File.ResolveLinkTarget(file, returnFinalTarget: true)!.FullName;

    /// <summary>Says before anything is computed that a file cannot be written because of a link in its lock's place.</summary>
    /// <exception cref="IOException">There is one.</exception>
    public static void RefuseLink(string file) => WriteLock.RefuseLink(LockOf(Target(file)));

    private static string LockOf(string target) => Hidden(HiddenNames.Lock + "-", target);

    private static string Hidden(string prefix, string target) =>
        Path.Combine(Path.GetDirectoryName(target)!, prefix + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Path.GetFileName(target))))[..HashLength]);

    private static void Write(string part, string target, byte[] content, bool replace)
    {
        try
        {
            File.Delete(part); // a killed run's, or a link that somebody laid there: it goes, and what it leads to stays as it is
            using (var stream = new FileStream(part, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                stream.Write(content);
                stream.Flush(flushToDisk: true);
            }

            File.Move(part, target, replace);
        }
        finally
        {
            File.Delete(part); // gone already where it was moved in
        }
    }
}
