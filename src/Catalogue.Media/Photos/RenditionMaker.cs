namespace Catalogue.Media.Photos;

/// <summary>Makes the renditions of a stored original and puts them into the store beside it. Doing it twice gives the same files.</summary>
public sealed class RenditionMaker
{
    private readonly MediaStore _store;
    private readonly ImageWorkerProcess _worker;

    /// <summary>Joins the parts.</summary>
    public RenditionMaker(MediaStore store, ImageWorkerProcess worker)
    {
        _store = store;
        _worker = worker;
    }

    /// <summary>Makes all renditions or none.</summary>
    /// <param name="original">The original's key.</param>
    /// <param name="widths">Widths in pixels, see <see cref="RenditionSizes"/>.</param>
    /// <param name="cancellationToken">Ends the work; the store is as before.</param>
    /// <returns>How the worker ended; after Done the paths are those in the store.</returns>
    /// <exception cref="FileNotFoundException">The store has no such original.</exception>
    public async Task<ImageWork> RunAsync(MediaKey original, IReadOnlyList<int> widths, CancellationToken cancellationToken)
    {
        if (!_store.Contains(original))
        {
            throw new FileNotFoundException($"The store has no {original}.", original.FileName);
        }

        var folder = _store.NewIncomingPath();
        Directory.CreateDirectory(folder);
        try
        {
            var work = await _worker.DeriveAsync(_store.PathOf(original), folder, widths, cancellationToken);
            return work is ImageWork.Done done
                ? done with { Renditions = [.. done.Renditions.Select(rendition => Adopt(original, rendition))] }
                : work;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private Rendition Adopt(MediaKey original, Rendition rendition)
    {
        var key = MediaKey.Rendition(original.Hash, rendition.Width);
        _store.Adopt(key, rendition.Path);
        return rendition with { Path = _store.PathOf(key) };
    }
}
