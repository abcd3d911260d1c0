using System.ComponentModel;
using System.Globalization;
using System.Text.Json.Serialization;
using Catalogue.Domain.Text;
using Catalogue.Domain.UsbPd;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Decodes USB Power Delivery source capabilities. Computes only: nothing is stored, anybody may ask.</summary>
internal static class DecodePdoEndpoint
{
    private const int MostWords = 1000;
    private const int MostWarnings = 100;

    public sealed record Request(
        [property: Description("The words of one list in order, eight hexadecimal digits each, such as 0x0801912C; 1000 at most. Give words or text, not both.")] IReadOnlyList<string?>? Words = null,
        [property: Description("A pasted dump: words in any style, the bytes of messages, a log, a table; 1048576 characters at most.")] string? Text = null,
        [property: Description("The power the source declares, in W, 0.5 to 240: the list is then compared with the power rules.")] double? DeclaredPdpW = null);

    public sealed record Answer(
        [property: Description("One item for each word in order, padding and unreadable words included; the lists of a text one after the other.")] IReadOnlyList<Item> Items,
        [property: Description("Lists that are no offer, such as a sink's beside a source's.")] IReadOnlyList<OtherList> OtherLists,
        [property: Description("The items in the other order of bytes, where a person has to say which is meant; else null.")] OtherReading? OtherReading,
        [property: Description("The highest power of a fixed object of the first list, in mW; null where there is none.")] int? BestFixedPowerMw,
        [property: Description("True where an object of the first list offers more than 3 A."), JsonPropertyName("needs_5a_cable")] bool? NeedsFiveAmpereCable,
        [property: Description("True where an object of the first list offers more than 20 V, beside programmable supplies.")] bool? NeedsEprCable,
        [property: Description("The first list beside the rules for the declared power; null where none was given. Screening, not certification.")] Rules? Rules,
        [property: Description("What a person should look at.")] IReadOnlyList<string> Warnings,
        [property: Description("How the text was taken.")] IReadOnlyList<string> Notes);

    public sealed record Item(
        [property: Description("Place in its list, from 1.")] int Position,
        [property: Description("fixed, battery, variable, spr_pps, spr_avs, epr_avs, reserved_apdo, padding or unreadable.")] string Kind,
        [property: Description("The word as 0x and eight digits; what was read where it is damaged; null for text.")] string? Word,
        [property: Description("In mV; fixed supplies only.")] int? VoltageMv,
        [property: Description("Lowest voltage in mV.")] int? MinMv,
        [property: Description("Highest voltage in mV.")] int? MaxMv,
        [property: Description("Highest current in mA; null where the object names a power, or two currents.")] int? CurrentMa,
        [property: Description("Power in mW, rounded down: voltage times current of a fixed supply, else the power that the object names.")] int? PowerMw,
        [property: Description("Power of an epr_avs object in W.")] int? PdpW,
        [property: Description("spr_avs: highest current from 9 V to 15 V in mA."), JsonPropertyName("current_9_15v_ma")] int? CurrentTo15VMa,
        [property: Description("spr_avs: highest current from 15 V to 20 V in mA; 0 where the range stops at 15 V."), JsonPropertyName("current_15_20v_ma")] int? CurrentTo20VMa,
        [property: Description("Code of the overload for a moment, 0 to 3; null where the kind has none, or only text is there.")] int? PeakCode,
        [property: Description("dual_role_power, usb_suspend, unconstrained_power, usb_comm, dual_role_data, unchunked_ext, epr_capable, pps_power_limited.")] IReadOnlyList<string> Flags,
        [property: Description("word, bytes, or text: a claim, not a decode.")] string Source,
        [property: Description("sink for a list labelled as a sink's; else null.")] string? Label,
        [property: Description("Which list of the text it is of, from 1.")] int List,
        [property: Description("Why it could not be read; else null.")] string? Reason);

    public sealed record OtherList(string Label, IReadOnlyList<Item> Items);

    public sealed record OtherReading(string Reading, IReadOnlyList<Item> Items);

    public sealed record Rules(
        double DeclaredPdpW,
        [property: Description("True where every required fixed voltage has at least the current asked for.")] bool SupportsDeclaredPower,
        [property: Description("Required fixed voltages that are missing or too low, in V.")] IReadOnlyList<int> FixedVoltagesBelowRuleV,
        IReadOnlyList<RuleVoltage> Voltages,
        [property: Description("not_required, present, below or missing; missing is no fault of a source built to revision 3.0 or 3.1.")] string SprAvsState,
        [property: Description("not_required, present, below or missing.")] string EprAvsState,
        [property: Description("Fixed voltages that the rules do not have, or not at this power.")] IReadOnlyList<OutsideVoltage> OutsideRules,
        IReadOnlyList<RulePps> Programmable,
        [property: Description("All of it in sentences.")] IReadOnlyList<string> Facts);

    public sealed record RuleVoltage(
        int VoltageMv, [property: Description("In mA.")] int LeastMa, [property: Description("In mA.")] int MostMa, int? OfferedMa, [property: Description("met, missing, too_low, too_high or less_in_standard_mode.")] string Outcome);

    public sealed record OutsideVoltage(int Position, int VoltageMv, [property: Description("not_in_list (of revision 3.2) or above_class.")] string Why);

    public sealed record RulePps(
        int Position, [property: Description("five_volts (older revisions), nine_volts, fifteen_volts, twenty_volts or other.")] string Class, int FloorMv, bool HasOlderFloor, int? WantedMa, int OfferedMa);

    public static void MapDecodePdo(this RouteGroupBuilder api) => api.MapPost("decode/pdo", Decode).AllowAnonymous().WithTags("decode")
        .WithSummary("Decodes USB Power Delivery source capabilities from words or from a pasted dump.").Produces<Answer>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static IResult Decode([FromBody] Request request)
    {
        if (request.Words is null == request.Text is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "Give either words, an array such as [\"0x0801912C\"], or text, a pasted dump" + (request.Words is null ? "; neither was there." : "; both were there."));
        PowerRules? rules = null;
        if (request.DeclaredPdpW is { } pdp && (rules = PowerRules.For(pdp)) is null)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, string.Create(CultureInfo.InvariantCulture, $"declared_pdp_w is {PowerRules.LowestPdpW} to {PowerRules.HighestPdpW}; it was {pdp}."), "declared_pdp_w");
        return request.Words is { } words ? OfWords(words, rules) : OfText(request.Text!, rules);
    }

    private static IResult OfWords(IReadOnlyList<string?> words, PowerRules? rules)
    {
        if (words.Count is 0 or > MostWords)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, $"words has 1 to {MostWords} words of eight hexadecimal digits, such as 0x0801912C; it had {words.Count}.", "words");
        var list = new CapabilityList(words.Select((word, i) => WordText.Read(word, out var value) is { } reason
            ? new PlacedCapability(i + 1, new Capability.Unreadable(Shortened(word), reason), null, WordOrigin.Word)
            : PlacedCapability.Of(i + 1, value, WordOrigin.Word)));
        var warnings = list.Facts.Select(fact => fact.Words).ToList();
        if (list.LooksSwapped)
            warnings.Insert(0, "The first object is 5 V only with its bytes in the opposite order: the words may have been printed as they came over the wire. The items are as written; other_reading holds the other order. Please say which is meant.");
        return Give([list], [], list.LooksSwapped ? new OtherReading("bytes_swapped", Items(list.Swapped(), 1)) : null, rules, warnings, []);
    }

    private static IResult OfText(string text, PowerRules? rules) => CapabilityText.Read(text) switch
    {
        CapabilityReading.Read x => Give(x.Lists, x.KeptApart, x.AsWritten is { } written ? new OtherReading("as_written", Items(written, 1)) : null, rules, [.. x.Warnings], [.. x.Notes]),
        CapabilityReading.Refused x => ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, x.Reason, "text"),
        _ => throw new InvalidOperationException("Every reading is known."),
    };

    private static IResult Give(IReadOnlyList<CapabilityList> lists, IReadOnlyList<CapabilityList> apart, OtherReading? other, PowerRules? rules, List<string> warnings, List<string> notes)
    {
        var first = lists[0];
        var offer = first.Role == PortRole.Source ? first : null;
        if (lists.Count > 1)
            notes.Add("Best power, cables and rules are those of the first list.");
        if (warnings.Count > MostWarnings)
            warnings = [.. warnings.Take(MostWarnings), $"And {warnings.Count - MostWarnings} more."];
        return TypedResults.Ok(new Answer(
            [.. lists.SelectMany((list, i) => Items(list, i + 1))],
            [.. apart.Select((list, i) => new OtherList(list.Label ?? SnakeCase.Code(list.Role), Items(list, lists.Count + i + 1)))],
            other,
            offer?.BestFixedPowerMw,
            offer?.NeedsFiveAmpereCable,
            offer?.NeedsEprCable,
            offer is null || rules is null ? null : Of(PowerRuleCheck.Of(offer, rules)),
            warnings,
            notes));
    }

    private static Rules Of(PowerRuleCheck check) => new(
        check.Rules.PdpW,
        check.SupportsDeclaredPower,
        [.. check.BelowRuleMv.Select(voltage => voltage / 1000)],
        [.. check.Voltages.Select(voltage => new RuleVoltage(voltage.Required.VoltageMv, voltage.Required.LeastMa, voltage.Required.MostMa, voltage.OfferedMa, SnakeCase.Code(voltage.Outcome)))],
        SnakeCase.Code(check.SprAvs),
        SnakeCase.Code(check.EprAvs),
        [.. check.Outside.Select(outside => new OutsideVoltage(outside.Position, outside.VoltageMv, outside.AboveClass ? "above_class" : "not_in_list"))],
        [.. check.Programmable.Select(pps => new RulePps(pps.Position, SnakeCase.Code(pps.Class), pps.FloorMv, pps.HasOlderFloor, pps.WantedMa, pps.OfferedMa))],
        check.Words);

    private static List<Item> Items(CapabilityList list, int number) => [.. list.Items.Select(item => Of(item, list.Label, number))];

    private static Item Of(PlacedCapability item, string? label, int list)
    {
        var capability = item.Capability;
        var avs = capability as Capability.SprAvs;
        var power = capability switch
        {
            Capability.Fixed x => x.PowerMw,
            Capability.Battery x => x.MaxPowerMw,
            Capability.EprAvs x => x.PdpW * 1000,
            _ => (int?)null,
        };
        var peak = capability switch { Capability.Fixed x => x.Peak, Capability.SprAvs x => x.Peak, Capability.EprAvs x => x.Peak, _ => (PeakCurrent?)null };
        var damage = capability as Capability.Unreadable;
        return new Item(
            item.Position,
            SnakeCase.Code(capability.Kind),
            item.Word is { } word ? CapabilityWord.Text(word) : damage?.AsRead,
            (capability as Capability.Fixed)?.VoltageMv,
            capability.Window?.MinMv,
            capability.Window?.MaxMv,
            capability is Capability.SprAvs or Capability.EprAvs ? null : capability.HighestCurrentMa,
            power,
            (capability as Capability.EprAvs)?.PdpW,
            avs?.CurrentTo15VMa,
            avs?.CurrentTo20VMa,
            item.Origin == WordOrigin.Text ? null : (int?)peak,
            Flags(capability),
            SnakeCase.Code(item.Origin),
            label,
            list,
            damage?.Reason);
    }

    private static List<string> Flags(Capability capability) => capability switch
    {
        Capability.Fixed x => [.. Enum.GetValues<SourceFlags>().Where(flag => flag != SourceFlags.None && x.Flags.HasFlag(flag)).OrderDescending().Select(SnakeCase.Code)],
        Capability.SprPps { IsPowerLimited: true } => ["pps_power_limited"],
        _ => [],
    };

    private static string Shortened(string? word) => word is null ? "" : word.Length <= 40 ? word : word[..40] + "…";
}
