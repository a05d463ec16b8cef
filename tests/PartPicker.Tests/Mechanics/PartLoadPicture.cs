using System.Globalization;
using System.Text;

namespace PartPicker.Tests.Mechanics;

/// <summary>Draws speed over torque at part load: the published line, its bands, and what the model says.</summary>
internal static class PartLoadPicture
{
    private const double Width = 640, Height = 420, Left = 64, Right = 616, Top = 56, Bottom = 356;
    private const double LeastTorque = 0.1, LeastSpeed = 0.5;
    private const double BarWidth = 22;

    // Told apart without colour too: a bar, a dashed line with squares, a solid line in its area.
    private const string Style = """
          <style>
            svg { --paper: #ffffff; --ink: #1c2733; --grid: #d5dbe1; --band: #9aa7b4; --model: #0b61a4; --cycle: #a33c00 }
            @media (prefers-color-scheme: dark) {
              svg { --paper: #14191f; --ink: #e6ebf0; --grid: #36404a; --band: #76828e; --model: #6db8f5; --cycle: #ffa361 }
            }
            text { font: 14px system-ui, sans-serif; fill: var(--ink) }
            .grid { stroke: var(--grid) }
            .band { fill: var(--band); fill-opacity: .3; stroke: var(--band) }
            .area { fill: var(--model); fill-opacity: .3 }
            .model { fill: none; stroke: var(--model); stroke-width: 2.5 }
            .cycle { fill: none; stroke: var(--cycle); stroke-width: 2; stroke-dasharray: 6 4 }
            .point { fill: var(--cycle) }
          </style>
        """;

    public static string Draw(PartLoadLine line)
    {
        (double Torque, double Least, double Mean, double Greatest)[] model =
        [
            .. Enumerable.Range(0, 18).Select(k => 0.15 + k * 0.05).Concat(PartLoadLine.Cycle.Select(c => c.Torque)).Order()
                .Select(torque => (torque, Of: line.Shares(torque)))
                .Select(p => (p.torque, p.Of.Min(), p.Of.Average(), p.Of.Max())),
        ];
        (double Torque, double Speed)[] cycle = [(1, 1), .. PartLoadLine.Cycle.Select(c => (c.Torque, c.Speed))];

        var svg = new StringBuilder();
        svg.Append(Text($"""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {Width:0} {Height:0}" role="img" aria-labelledby="title desc">
              <title id="title">Engine speed of the sample snow machine at part load</title>
              <desc id="desc">{Description(model)}</desc>

            """));
        svg.Append(Style).Append('\n');
        svg.Append(Text($"  <rect width=\"{Width:0}\" height=\"{Height:0}\" style=\"fill: var(--paper)\"/>\n"));
        Axes(svg);
        foreach ((double torque, _, double least, double greatest) in PartLoadLine.Cycle)
        {
            svg.Append(Text(
                $"  <rect class=\"band\" x=\"{X(torque) - BarWidth / 2:0.0}\" y=\"{Y(greatest):0.0}\" width=\"{BarWidth:0}\" height=\"{Y(least) - Y(greatest):0.0}\"/>\n"));
        }

        string edge = Points([.. model.Select(m => (m.Torque, m.Greatest)), .. model.Reverse().Select(m => (m.Torque, m.Least))]);
        svg.Append($"  <polygon class=\"area\" points=\"{edge}\"/>\n");
        svg.Append($"  <polyline class=\"model\" points=\"{Points([.. model.Select(m => (m.Torque, m.Mean))])}\"/>\n");
        svg.Append($"  <polyline class=\"cycle\" points=\"{Points(cycle)}\"/>\n");
        foreach ((double torque, double speed) in cycle)
            svg.Append(Text($"  <rect class=\"point\" x=\"{X(torque) - 4:0.0}\" y=\"{Y(speed) - 4:0.0}\" width=\"8\" height=\"8\"/>\n"));
        Legend(svg);
        return svg.Append("</svg>\n").ToString();
    }

    private static string Description((double Torque, double Least, double Mean, double Greatest)[] model) => string.Join(
        " ",
        PartLoadLine.Cycle.Select(c => (Cycle: c, Model: model.First(m => m.Torque == c.Torque))).Select(p => Text(
            $"At {p.Cycle.Torque:0.00} of the torque the published speed is {p.Cycle.Speed:0.00}, the band {p.Cycle.Least:0.00} to {p.Cycle.Greatest:0.00}, the model {p.Model.Least:0.000} to {p.Model.Greatest:0.000} over nine ratios.")));

    private static void Axes(StringBuilder svg)
    {
        for (int k = 5; k <= 10; k++)
        {
            svg.Append(Text($"  <path class=\"grid\" d=\"M{Left:0} {Y(k / 10.0):0.0}H{Right:0}\"/>\n"));
            svg.Append(Text($"  <text x=\"{Left - 8:0}\" y=\"{Y(k / 10.0) + 5:0.0}\" text-anchor=\"end\">{k / 10.0:0.0}</text>\n"));
        }

        for (int k = 2; k <= 10; k += 2)
        {
            svg.Append(Text($"  <path class=\"grid\" d=\"M{X(k / 10.0):0.0} {Top:0}V{Bottom:0}\"/>\n"));
            svg.Append(Text($"  <text x=\"{X(k / 10.0):0.0}\" y=\"{Bottom + 20:0}\" text-anchor=\"middle\">{k / 10.0:0.0}</text>\n"));
        }

        svg.Append(Text($"  <text x=\"{(Left + Right) / 2:0}\" y=\"{Bottom + 46:0}\" text-anchor=\"middle\">share of the torque</text>\n"));
        svg.Append(Text($"  <text x=\"{Left - 48:0}\" y=\"{Top - 22:0}\">share of the speed</text>\n"));
    }

    private static void Legend(StringBuilder svg)
    {
        const double x = 372, y = 256;
        svg.Append(Text($"""
              <polyline class="cycle" points="{x:0},{y:0} {x + 34:0},{y:0}"/><rect class="point" x="{x + 13:0}" y="{y - 4:0}" width="8" height="8"/>
              <text x="{x + 44:0}" y="{y + 5:0}">test cycle, published</text>
              <rect class="band" x="{x + 6:0}" y="{y + 17:0}" width="{BarWidth:0}" height="18"/>
              <text x="{x + 44:0}" y="{y + 31:0}">band of plausible drives</text>
              <rect class="area" x="{x:0}" y="{y + 45:0}" width="34" height="14"/><polyline class="model" points="{x:0},{y + 52:0} {x + 34:0},{y + 52:0}"/>
              <text x="{x + 44:0}" y="{y + 57:0}">model, over nine ratios</text>

            """));
    }

    private static string Points(IReadOnlyList<(double Torque, double Speed)> points) =>
        string.Join(" ", points.Select(p => Text($"{X(p.Torque):0.0},{Y(p.Speed):0.0}")));

    private static double X(double torque) => Left + (torque - LeastTorque) / (1 - LeastTorque) * (Right - Left);

    private static double Y(double speed) => Bottom - (speed - LeastSpeed) / (1 - LeastSpeed) * (Bottom - Top);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
