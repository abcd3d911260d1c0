using System.Runtime.InteropServices;

namespace Catalogue.Media.Photos;

/// <summary>
/// Makes a rename survive a power cut. On Linux a new name lives in its folder, which has to be flushed itself; the base library
/// opens no folders, hence the three system calls. Elsewhere the file system's journal has to do.
/// </summary>
internal static partial class FolderFlush
{
    private const int ReadOnlyCloseOnExec = 0x80000;

    public static void Flush(string folder)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        var descriptor = Open(folder, ReadOnlyCloseOnExec);
        if (descriptor < 0)
        {
            throw new IOException($"The folder {folder} cannot be opened to flush it (error {Marshal.GetLastPInvokeError()}).");
        }

        try
        {
            // Some network file systems refuse to flush a folder (EINVAL); the file itself is flushed by then.
            _ = Fsync(descriptor);
        }
        finally
        {
            _ = Close(descriptor);
        }
    }

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Fsync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Close(int descriptor);
}
