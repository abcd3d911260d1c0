using Catalogue.Data.Teardowns;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Fields;

namespace Catalogue.Lab.Facts;

/// <summary>The facts of a teardown while they are edited: numbers and days as they are typed.</summary>
public sealed class EditedFacts
{
    private Revision _from;

    private EditedFacts(TeardownForm form, Revision from)
    {
        Form = form;
        _from = from;
    }

    /// <summary>What needs no reading.</summary>
    public TeardownForm Form { get; }

    /// <summary>The version that the next save expects.</summary>
    public uint Version => _from.Version;

    /// <summary>The year as typed.</summary>
    public string? Year { get; set; }

    /// <summary>The mass in kilograms as typed.</summary>
    public string? MassKg { get; set; }

    /// <summary>The day as typed.</summary>
    public string? TakenApartOn { get; set; }

    /// <summary>The facts of a revision.</summary>
    public static EditedFacts Of(Revision revision)
    {
        ArgumentNullException.ThrowIfNull(revision);
        var form = new TeardownForm
        {
            Title = revision.Title,
            Standfirst = revision.Standfirst,
            ProductName = revision.ProductName,
            Model = revision.Model,
            Category = revision.Category,
            Obtained = revision.Obtained,
            ObtainedNote = revision.ObtainedNote,
            TakenApartBy = revision.TakenApartBy,
            Condition = revision.Condition,
            Firmware = revision.Firmware,
            CellChemistry = revision.CellChemistry,
            MethodMarkdown = revision.MethodMarkdown,
        };
        return new EditedFacts(form, revision)
        {
            Year = NumberText.Print(revision.Year),
            MassKg = NumberText.Print(revision.MassKg),
            TakenApartOn = NumberText.Print(revision.TakenApartOn),
        };
    }

    /// <summary>Notes that the next save begins from a revision, since it was just saved or both were seen.</summary>
    public void BeginFrom(Revision revision) => _from = revision;

    /// <summary>True when a revision says of product and sample what the fields began from.</summary>
    public bool BeganFrom(Revision revision)
    {
        ArgumentNullException.ThrowIfNull(revision);
        return Facts(_from).Equals(Facts(revision));

        static object Facts(Revision r) =>
            (r.Title, r.Standfirst, r.ProductName, r.Model, r.Category, r.Year, r.MassKg, (r.TakenApartOn, r.TakenApartBy, r.Obtained, r.ObtainedNote, r.Condition, r.Firmware, r.CellChemistry, r.MethodMarkdown));
    }

    /// <summary>The form to save, or why what was typed cannot be read.</summary>
    public (TeardownForm? Form, string? Problem) Read()
    {
        (Form.Year, var year) = NumberText.ReadWhole(Year);
        (Form.MassKg, var mass) = NumberText.Read(MassKg, Unit.Kilogram);
        (Form.TakenApartOn, var day) = NumberText.ReadDay(TakenApartOn);
        return (year ?? mass ?? day) is { } problem ? (null, problem) : (Form, null);
    }
}
