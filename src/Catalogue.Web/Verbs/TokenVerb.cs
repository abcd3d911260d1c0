using System.CommandLine;
using Catalogue.Data.Accounts;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>token</c>: makes a bearer token for a script and prints it as the last line.</summary>
internal static class TokenVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var name = new Argument<string>("NAME") { Description = "What the token is for; printed beside what it did." };
        var scope = new Option<string>("--scope") { Description = "read (drafts included) or write.", DefaultValueFactory = _ => "read", HelpName = "read|write" };
        scope.AcceptOnlyFromAmong("read", "write");
        var command = new Command("token", "Make a bearer token for a script; it is printed once, as the last line.") { name, scope, data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var made = parsed.GetRequiredValue(name).Trim();
                if (made.Length is 0 or > 120)
                {
                    await Console.Error.WriteLineAsync("NAME has 1 to 120 characters.");
                    return 1;
                }

                var token = await services.GetRequiredService<Tokens>().CreateAsync(made, parsed.GetRequiredValue(scope) == "write" ? TokenScope.Write : TokenScope.Read, cancel);
                await Console.Out.WriteLineAsync(token);
                return 0;
            },
            cancellation));
        return command;
    }
}
