using Catalogue.Data.BenchLogs;
using Catalogue.Data.Components;
using Catalogue.Data.Isolation;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;

namespace Catalogue.Web.Demo;

/// <summary>A teardown of the demo as plain data. Records name each other by designators, port names, rail names and keys.</summary>
internal sealed record DemoTeardown
{
    public required string Brand { get; init; }

    public required string Name { get; init; }

    public required string Model { get; init; }

    public required ProductCategory Category { get; init; }

    /// <summary>All facts but those above; they are filled in from there.</summary>
    public required TeardownForm Facts { get; init; }

    public required IReadOnlyList<PortForm> Ports { get; init; }

    public required IReadOnlyList<DemoClaim> Claims { get; init; }

    public required IReadOnlyList<DemoTest> Tests { get; init; }

    public required IReadOnlyList<RailForm> Rails { get; init; }

    public required IReadOnlyList<DemoBoard> Boards { get; init; }

    public IReadOnlyList<DemoPath> IsolationPaths { get; init; } = [];

    public IReadOnlyList<DemoReading> DischargeReadings { get; init; } = [];

    /// <summary>Pictures of the product as a whole; its ports are marked on them where the drawing knows their places.</summary>
    public required IReadOnlyList<DemoPicture> Pictures { get; init; }

    public required IReadOnlyList<DemoFinding> Findings { get; init; }

    public required IReadOnlyList<DemoStep> Steps { get; init; }

    /// <summary>Later revisions, in order.</summary>
    public IReadOnlyList<DemoCorrection> Corrections { get; init; } = [];
}

/// <summary>A claim, and the port it speaks of.</summary>
internal sealed record DemoClaim(ClaimPlace Place, string Subject, string AsPrinted, double? Value = null, Unit? Unit = null, string? Port = null);

/// <summary>A bench test under a key by which findings rest on it.</summary>
internal sealed record DemoTest(string Key, BenchTestForm Form, string? Port = null);

/// <summary>A measured path, and the board it was measured on.</summary>
internal sealed record DemoPath(MeasuredPathForm Form, string Board);

/// <summary>A discharge reading, and the rail it is of.</summary>
internal sealed record DemoReading(DischargeReadingForm Form, string Rail);

/// <summary>A board with its parts and pictures.</summary>
internal sealed record DemoBoard(BoardForm Form, IReadOnlyList<DemoPicture> Pictures, IReadOnlyList<DemoPart> Parts);

/// <summary>One kind of part at one place. Its designators are its name, in its drawing too.</summary>
internal sealed record DemoPart(string Designators, string Role, FunctionClass Class, string? Marking)
{
    /// <summary>Null while the part is not identified.</summary>
    public string? PartNumber { get; init; }

    public string? Maker { get; init; }

    public string? Package { get; init; }

    public string? Value { get; init; }

    public int Quantity { get; init; } = 1;

    public int Parallel { get; init; } = 1;

    public int Series { get; init; } = 1;

    public string? Rail { get; init; }

    public CircuitPosition? Position { get; init; }

    public string? Note { get; init; }

    public IReadOnlyList<RatingForm> Ratings { get; init; } = [];
}

/// <summary>A drawing, by the name of its embedded file.</summary>
internal sealed record DemoPicture(string File, PhotoForm Form);

/// <summary>A finding with the parts and tests it rests on.</summary>
internal sealed record DemoFinding(string Heading, string Markdown, IReadOnlyList<string> Parts, IReadOnlyList<string> Tests);

/// <summary>A step of taking apart, with the picture that shows it.</summary>
internal sealed record DemoStep(string Heading, string Markdown, string? Picture = null);

/// <summary>A later revision: what it changes, and the note it is published with. Rails and findings replace those of the same name.</summary>
internal sealed record DemoCorrection
{
    public required string Note { get; init; }

    public string? Standfirst { get; init; }

    public IReadOnlyList<DemoTest> Tests { get; init; } = [];

    public IReadOnlyList<RailForm> Rails { get; init; } = [];

    public IReadOnlyList<DemoFinding> Findings { get; init; } = [];
}
