using System.Security.Claims;
using Catalogue.Data.Accounts;

namespace Catalogue.Lab.Accounts;

/// <summary>Who may do what in the lab.</summary>
public static class LabAccess
{
    /// <summary>The roles that may record.</summary>
    public const string Recording = Roles.Reviewer + "," + Roles.Editor + "," + Roles.Administrator;

    /// <summary>True for those who may publish.</summary>
    public static bool MayPublish(ClaimsPrincipal user) => user.IsInRole(Roles.Editor) || user.IsInRole(Roles.Administrator);
}
