namespace Catalogue.Domain.Components.Lists;

/// <summary>What an import does with a part line.</summary>
public enum PlannedRowAction
{
    /// <summary>It becomes a component.</summary>
    Add,

    /// <summary>The component it became earlier, or that stands at its designators, is changed.</summary>
    Update,

    /// <summary>Its row is word for word what was imported before: nothing is done.</summary>
    Same,
}
