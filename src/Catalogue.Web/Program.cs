using Catalogue.Media.Photos;
using Catalogue.Web.Verbs;

// The image worker comes first: it runs with an empty environment and must not touch configuration, logs or the database.
if (args is [ImageWorker.Verb, ..])
    return ImageWorker.Run(args, Console.Out);

return await CatalogueCommand.RunAsync(args);
