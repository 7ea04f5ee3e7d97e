using System.Text;

namespace ToolpathForge.Lettering;

/// <summary>Writes accented letters without their accents, for the alphabet has none: a name stays readable.</summary>
public static class Accents
{
    /// <summary>The text with every letter of the Latin script that carries an accent replaced by the one or two it is read as: ä a, ß ss, ø o.</summary>
    /// <param name="text">Any text; characters that are not such letters stay.</param>
    public static string Without(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            int at = Accented.IndexOf(rune.ToString(), StringComparison.Ordinal);
            plain.Append(rune.Value switch
            {
                'ß' => "ss",
                'æ' => "ae",
                'Æ' => "AE",
                'œ' => "oe",
                'Œ' => "OE",
                'þ' => "th",
                'Þ' => "Th",
                _ when at >= 0 && rune.IsBmp => Plain[at].ToString(),
                _ => rune.ToString(),
            });
        }

        return plain.ToString();
    }

    // Letter above its plain form (Latin-1 and the European letters of Latin Extended-A).
    private const string Accented = "ÀÁÂÃÄÅàáâãäåÇçÈÉÊËèéêëÌÍÎÏìíîïÐðÑñÒÓÔÕÖòóôõöÙÚÛÜùúûüÝýÿĀāĂăĄąĆćĈĉĊċČčĎďĐđĒēĔĕĖėĘęĚěĜĝĞğĠġĢģĤĥĦħĨĩĪīĬĭĮįİıĴĵĶķĹĺĻļĽľŁłŃńŅņŇňŌōŎŏŐőŔŕŖŗŘřŚśŜŝŞşŠšŢţŤťŦŧŨũŪūŬŭŮůŰűŲųŴŵŶŷŸŹźŻżŽž";
    private const string Plain = "AAAAAAaaaaaaCcEEEEeeeeIIIIiiiiDdNnOOOOOoooooUUUUuuuuYyyAaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIiJjKkLlLlLlLlNnNnNnOoOoOoRrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZz";
}
