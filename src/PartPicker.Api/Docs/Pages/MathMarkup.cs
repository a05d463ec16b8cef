using System.Collections.Frozen;
using System.Text;

namespace PartPicker.Api.Docs;

/// <summary>Writes a formula of the pages as MathML, which browsers show without a script.</summary>
/// <remarks>
/// The pages write formulas in the notation of TeX, as code hosts show it; this reads the part of it that they use and
/// refuses the rest, so that a page with a formula that would come out wrong is found by the tests.
/// </remarks>
internal sealed class MathMarkup
{
    private static readonly FrozenDictionary<string, string> Letters = new Dictionary<string, string>
    {
        ["alpha"] = "α", ["beta"] = "β", ["gamma"] = "γ", ["eta"] = "η", ["theta"] = "θ", ["kappa"] = "κ",
        ["lambda"] = "λ", ["mu"] = "μ", ["pi"] = "π", ["tau"] = "τ", ["varphi"] = "φ", ["psi"] = "ψ", ["omega"] = "ω",
        ["Delta"] = "Δ", ["Theta"] = "Θ",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> Signs = new Dictionary<string, string>
    {
        ["le"] = "≤", ["ge"] = "≥", ["pm"] = "±", ["mp"] = "∓", ["cdot"] = "·", ["times"] = "×", ["sum"] = "∑", ["int"] = "∫",
    }.ToFrozenDictionary();

    private static readonly FrozenSet<string> Functions =
        new[] { "sin", "cos", "tan", "ln", "max", "min", "arcsin" }.ToFrozenSet();

    private static readonly FrozenDictionary<string, string> Spaces = new Dictionary<string, string>
    {
        [","] = "0.17em", [" "] = "0.33em", ["quad"] = "1em", ["qquad"] = "2em",
    }.ToFrozenDictionary();

    private const string Thin = "<mspace width=\"0.17em\"></mspace>";

    private readonly string source;
    private int at;

    private MathMarkup(string source) => this.source = source;

    /// <summary>The formula as a math element; on a line of its own or within one.</summary>
    /// <exception cref="FormatException">The formula uses what is not read here.</exception>
    public static string Of(string formula, bool onItsOwn)
    {
        var reader = new MathMarkup(formula);
        string row = reader.Row(closing: '\0');
        return $"<math{(onItsOwn ? " display=\"block\"" : "")}>{row}</math>";
    }

    private string Row(char closing)
    {
        StringBuilder row = new("<mrow>");
        while (at < source.Length && source[at] != closing)
        {
            if (char.IsWhiteSpace(source[at]))
            {
                at++;
                continue;
            }

            string? function = FunctionAhead();
            row.Append(function is null ? "" : Thin).Append(WithScripts());
            if (function is not null && !source[at..].TrimStart().StartsWith('('))
                row.Append(Thin);
        }

        if (closing != '\0')
            Expect(closing);
        return row.Append("</mrow>").ToString();
    }

    private string? FunctionAhead() =>
        source[at] == '\\' ? Functions.FirstOrDefault(name => source.AsSpan(at + 1).StartsWith(name)) : null;

    // A base with what hangs below and above it.
    private string WithScripts()
    {
        string atom = Atom();
        string? below = null;
        string primes = "";
        string? above = null;
        while (at < source.Length)
        {
            if (source[at] == '_' && below is null)
            {
                at++;
                below = Atom();
            }
            else if (source[at] == '^' && above is null)
            {
                at++;
                above = Atom();
            }
            else if (source[at] == '\'')
            {
                at++;
                primes += "′";
            }
            else
            {
                break;
            }
        }

        bool limits = atom is "<mo>∑</mo>" or "<mi>max</mi>";
        string scripts = (below, above) switch
        {
            (null, null) => atom,
            (_, null) => limits ? $"<munder>{atom}{below}</munder>" : $"<msub>{atom}{below}</msub>",
            (null, _) => $"<msup>{atom}{above}</msup>",
            _ => limits ? $"<munderover>{atom}{below}{above}</munderover>" : $"<msubsup>{atom}{below}{above}</msubsup>",
        };
        return primes.Length == 0 ? scripts : $"<mrow>{scripts}<mo lspace=\"0\" rspace=\"0\">{primes}</mo></mrow>";
    }

    private string Atom()
    {
        While(char.IsWhiteSpace);
        char first = Next();
        if (first == '{')
        {
            at++;
            return Row('}');
        }

        if (first == '\\')
            return Command();
        if (char.IsAsciiDigit(first))
            return $"<mn>{While(c => char.IsAsciiDigit(c) || c == '.')}</mn>";
        at++;
        if (char.IsAsciiLetter(first))
            return $"<mi>{first}</mi>";
        if (first is '(' or ')' or '[' or ']' or '|')
            return $"<mo stretchy=\"false\">{first}</mo>";
        return "+-=<>/,;%".Contains(first, StringComparison.Ordinal)
            ? $"<mo>{(first == '-' ? "−" : HtmlPage.Encode(first.ToString()))}</mo>"
            : throw Fault($"'{first}'");
    }

    private string Command()
    {
        at++;
        string name = char.IsAsciiLetter(Next()) ? While(char.IsAsciiLetter) : source[at++].ToString();
        if (Letters.TryGetValue(name, out string? letter))
            return $"<mi>{letter}</mi>";
        if (Signs.TryGetValue(name, out string? sign))
            return $"<mo>{sign}</mo>";
        if (Functions.Contains(name))
            return $"<mi>{name}</mi>";
        if (Spaces.TryGetValue(name, out string? width))
            return $"<mspace width=\"{width}\"></mspace>";
        return name switch
        {
            "frac" => $"<mfrac>{Atom()}{Atom()}</mfrac>",
            "sqrt" => $"<msqrt>{Atom()}</msqrt>",
            "text" or "mathrm" => $"<mtext>{Braced()}</mtext>",
            "left" or "right" => Stretched(),
            _ => throw Fault($"\\{name}"),
        };
    }

    private string Stretched()
    {
        char sign = Next();
        at++;
        return $"<mo stretchy=\"true\">{HtmlPage.Encode(sign.ToString())}</mo>";
    }

    private string Braced()
    {
        Expect('{');
        string text = While(c => c != '}');
        Expect('}');
        return HtmlPage.Encode(text.Replace(' ', '\u00a0'));
    }

    private string While(Func<char, bool> belongs)
    {
        int from = at;
        while (at < source.Length && belongs(source[at]))
            at++;
        return source[from..at];
    }

    private char Next() => at < source.Length ? source[at] : throw Fault("an end where something must follow");

    private void Expect(char sign)
    {
        if (Next() != sign)
            throw Fault($"no '{sign}'");
        at++;
    }

    private FormatException Fault(string what) => new($"A formula has {what} at {at}: {source}");
}
