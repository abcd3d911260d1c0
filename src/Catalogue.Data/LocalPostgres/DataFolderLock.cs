using System.Globalization;

namespace Catalogue.Data.LocalPostgres;

/// <summary>
/// One program per data folder. The operating system drops the lock when the process ends, however it ends; the file
/// itself stays, since deleting it would let two programs lock two files of the same name.
/// </summary>
internal sealed class DataFolderLock : IDisposable
{
    // EAGAIN, as Linux numbers it; .NET passes it on as the result code.
    private const int WouldBlock = 11;

    private readonly FileStream _file;
    private readonly string _processFile;

    private DataFolderLock(FileStream file, string processFile)
    {
        _file = file;
        _processFile = processFile;
    }

    /// <summary>The lock, or null when another program holds it.</summary>
    /// <exception cref="UnauthorizedAccessException">The data folder may not be written by this program's account.</exception>
    public static DataFolderLock? TryTake(string dataFolder)
    {
        FileStream file;
        try
        {
            file = new FileStream(Path.Combine(dataFolder, "instance.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException held) when (held.HResult == WouldBlock)
        {
            return null;
        }

        // Beside the lock, because a locked file cannot be read by the program that wants to name the holder.
        var processFile = ProcessFile(dataFolder);
        try
        {
            File.WriteAllText(processFile, Environment.ProcessId.ToString(CultureInfo.InvariantCulture) + "\n");
        }
        catch
        {
            file.Dispose();
            throw;
        }

        return new DataFolderLock(file, processFile);
    }

    /// <summary>The process id of the holder, or null when it cannot be told.</summary>
    public static int? Holder(string dataFolder)
    {
        try
        {
            return int.TryParse(File.ReadAllText(ProcessFile(dataFolder)), NumberStyles.None | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var id)
                ? id
                : null;
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    public void Dispose()
    {
        File.Delete(_processFile);
        _file.Dispose();
    }

    private static string ProcessFile(string dataFolder) => Path.Combine(dataFolder, "instance.pid");
}
