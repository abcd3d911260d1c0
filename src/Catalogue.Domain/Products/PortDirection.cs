namespace Catalogue.Domain.Products;

/// <summary>Which way power may flow through a port, seen from the product.</summary>
public enum PortDirection
{
    /// <summary>Out of the product.</summary>
    Output,

    /// <summary>Into the product.</summary>
    Input,

    /// <summary>Both ways.</summary>
    Both,
}
