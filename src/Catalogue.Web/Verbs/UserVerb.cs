using System.CommandLine;
using Catalogue.Data.Accounts;
using Catalogue.Web.Accounts;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>user</c>: opens an account, or changes its role, and prints a link that signs its owner in once.</summary>
internal static class UserVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var name = new Argument<string>("NAME") { Description = "The name to sign in with." };
        var role = new Option<string>("--role") { Description = "What the person may do.", Required = true, HelpName = string.Join('|', Roles.All) };
        role.AcceptOnlyFromAmong([.. Roles.All]);
        var display = new Option<string?>("--display-name") { Description = "The name printed beside what they did; the sign-in name if not given.", HelpName = "NAME" };
        var command = new Command("user", "Open an account, or change its role; prints a one-time sign-in.") { name, role, display, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var outcome = await services.GetRequiredService<OpenAccount>().RunAsync(parsed.GetRequiredValue(name), parsed.GetValue(display), parsed.GetRequiredValue(role), cancel);
                if (outcome is OpenAccount.Outcome.Refused refused)
                {
                    await Console.Error.WriteLineAsync(refused.Reason);
                    return 1;
                }

                var opened = (OpenAccount.Outcome.Opened)outcome;
                await Console.Out.WriteLineAsync(opened.IsNew ? $"Account {opened.Name} opened as {opened.Role}." : $"Account {opened.Name} is now {opened.Role}.");
                await Console.Out.WriteLineAsync($"One-time sign-in, valid for {OneTimeSignIn.Lifetime.TotalHours:0} hours, to be opened at the site's own address:");
                await Console.Out.WriteLineAsync(SignInAddresses.OneTime(opened.Code));
                return 0;
            },
            cancellation));
        return command;
    }
}
