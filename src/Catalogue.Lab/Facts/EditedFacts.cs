using Catalogue.Data.Teardowns;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Fields;

namespace Catalogue.Lab.Facts;

/// <summary>The facts of a teardown while they are edited: numbers and days as they are typed.</summary>
public sealed class EditedFacts
{
    private EditedFacts(TeardownForm form, uint version)
    {
        Form = form;
        Version = version;
    }

    /// <summary>What needs no reading.</summary>
    public TeardownForm Form { get; }

    /// <summary>The version that the next save expects.</summary>
    public uint Version { get; set; }

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
        return new EditedFacts(form, revision.Version)
        {
            Year = NumberText.Print(revision.Year),
            MassKg = NumberText.Print(revision.MassKg),
            TakenApartOn = NumberText.Print(revision.TakenApartOn),
        };
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
