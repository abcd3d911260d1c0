using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>
/// The sheet on which one figure is worked out: what is known, what is missing, the steps, and what is left out. A rule takes its inputs
/// through it, so that none is used without standing in the working.
/// </summary>
public sealed class Sheet
{
    /// <summary>Ends each note that says a known stress is left out.</summary>
    public const string StaticOnly = "Static only.";

    private readonly List<WorkingInput> _inputs = [];
    private readonly List<MissingInput> _missing = [];
    private readonly List<(Term Named, string Symbol, string Name, Unit Unit, Term Sum)> _steps = [];
    private readonly List<Func<string>> _lines = [];
    private readonly List<string> _notes = [];
    private bool _leavesStressOut;

    /// <summary>True while nothing was found missing.</summary>
    public bool IsComplete => _missing.Count == 0;

    /// <summary>Takes an input that the figure cannot do without.</summary>
    /// <param name="given">The input, or null when it is not known.</param>
    /// <param name="symbol">Its symbol in the formula.</param>
    /// <param name="name">What it is.</param>
    /// <param name="unit">The unit it is stored in.</param>
    /// <param name="code">The code by which a missing one is counted.</param>
    /// <param name="words">What is missing, in words that finish “not computed: …”.</param>
    /// <param name="mayBeZero">True when zero is a value like any other; a negative one never is, except a temperature.</param>
    /// <returns>The quantity; a stand-in when it is missing, so that a rule can go on and name all that is missing.</returns>
    public Term Need(Given? given, string symbol, string name, Unit unit, string code, string words, bool mayBeZero = false)
    {
        if (given is null)
        {
            _missing.Add(new MissingInput(code, words));
            return Term.Of(symbol, unit, Interval.Exactly(1));
        }

        var known = Know(given, symbol, name, unit);
        if (unit is not Unit.DegreeCelsius && (mayBeZero ? given.Interval.Low < 0 : !given.Interval.IsPositive))
            _missing.Add(new MissingInput(code, words + (mayBeZero ? " that is not negative" : " above zero")));
        return known;
    }

    /// <summary>Puts down an input that is known.</summary>
    public Term Know(Given given, string symbol, string name, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(given);
        _inputs.Add(new WorkingInput(symbol, name, given.Interval.Low, given.Interval.Nominal, given.Interval.High, unit, given.Evidence, given.Source));
        return Term.Of(symbol, unit, given.Interval);
    }

    /// <summary>Puts down a house rule, a convention or a count, which has a source but no evidence.</summary>
    public Term Set(Interval value, string symbol, string name, Unit unit, string source)
    {
        _inputs.Add(new WorkingInput(symbol, name, value.Low, value.Nominal, value.High, unit, null, source));
        return Term.Of(symbol, unit, value);
    }

    /// <summary>Says that something else is missing.</summary>
    public void Miss(string code, string words) => _missing.Add(new MissingInput(code, words));

    /// <summary>Puts down a step; what follows writes its symbol, and the working shows how it comes about.</summary>
    public Term Step(string symbol, string name, Unit unit, Term sum)
    {
        ArgumentNullException.ThrowIfNull(sum);
        if (sum.Interval is not { } value)
        {
            if (IsComplete)
                _missing.Add(new MissingInput("plausible_inputs", "inputs of a size that can be computed with"));
            return Term.Of(symbol, unit, Interval.Exactly(1));
        }

        var named = Term.Of(symbol, unit, value);
        _steps.Add((named, symbol, name, unit, sum));
        return named;
    }

    /// <summary>Says what the figure assumes or leaves out.</summary>
    public void Note(string words) => _notes.Add(words);

    /// <summary>Says which line the figure is held against; asked only once the figure is computed.</summary>
    public void Line(Func<string> words) => _lines.Add(words);

    /// <summary>Says that a stress known to exist is left out: the verdict is then at best adequate.</summary>
    public void LeaveOut(string words)
    {
        _notes.Add($"{words} {StaticOnly}");
        _leavesStressOut = true;
    }

    /// <summary>The figure: the last step, or unknown with all that is missing.</summary>
    /// <param name="figure">The last step.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="lines">What it is held against.</param>
    public FigureResult Finish(Term figure, Unit unit, FigureLines lines)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(lines);
        if (!IsComplete || figure.Interval is not { } value)
            return new FigureResult.Unknown([.. _missing.Distinct()], new Working([], _inputs, [], _notes));
        var verdict = lines.Judge(value, _leavesStressOut);
        return new FigureResult.Computed(value, unit, verdict, _leavesStressOut, new Working(Steps(lines.MoreIsBetter ? End.Low : End.High), _inputs, [.. _lines.Select(words => words())], _notes, lines.Marks));
    }

    // From the last step back: which case of each earlier one the worst case of the figure rests on.
    private WorkingStep[] Steps(End worst)
    {
        var written = new WorkingStep[_steps.Count];
        var ends = new Dictionary<Term, End>(ReferenceEqualityComparer.Instance);
        for (var i = _steps.Count - 1; i >= 0; i--)
        {
            var (named, symbol, name, unit, sum) = _steps[i];
            var end = i == _steps.Count - 1 ? worst : ends.GetValueOrDefault(named, worst);
            sum.Trace(end, (term, from) => ends.TryAdd(term, from));
            written[i] = new WorkingStep(symbol, name, sum.InSymbols(), sum.InNumbers(End.Nominal), sum.InNumbers(end), named.Low, named.Nominal, named.High, unit);
        }

        return written;
    }
}
