using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace EstateWater.Agronomy.Units;

/// <summary>
/// Words that keep their quantities: the sentence is made once, where its facts are known, and told in any reader's units later.
/// Documents have it in the units of the estate folder, as <see cref="ToString()"/> gives it.
/// </summary>
[JsonConverter(typeof(SentenceJson))]
public sealed class Sentence : IEquatable<Sentence>
{
    private readonly IReadOnlyList<Part> parts;

    internal Sentence(IReadOnlyList<Part> parts) => this.parts = parts;

    /// <summary>No words.</summary>
    public static Sentence Empty { get; } = new([]);

    /// <summary>Words without quantities.</summary>
    public static implicit operator Sentence(string words) => new([new Part(words, null)]);

    /// <summary>An interpolated text; what stands in its holes is kept as it is.</summary>
    public static Sentence Of(Words words) => new(words.Parts);

    /// <summary>Sentences with something between them.</summary>
    public static Sentence Join(string between, IEnumerable<Sentence> sentences)
    {
        ArgumentNullException.ThrowIfNull(sentences);
        return new([.. sentences.SelectMany((sentence, i) => i == 0 ? sentence.parts : sentence.parts.Prepend(new Part(between, null)))]);
    }

    /// <summary>Without a full stop at its end.</summary>
    public Sentence WithoutFullStop() => parts is [.., { Value: string last }] ? new([.. parts.SkipLast(1), new Part(last.TrimEnd('.'), null)]) : this;

    /// <summary>As one reader is told it.</summary>
    public string In(IWording wording)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return string.Concat(parts.Select(part => part.Value switch
        {
            string text => text,
            Quantity quantity => wording.Tell(quantity),
            var value => wording.Tell((IFormattable)value, part.Format),
        }));
    }

    /// <summary>As documents have it.</summary>
    public override string ToString() => In(DocumentWording.Instance);

    /// <inheritdoc/>
    public bool Equals(Sentence? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Sentence);

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    internal IReadOnlyList<Part> Parts => parts;

    internal sealed record Part(object Value, string? Format);

    /// <summary>Gathers the parts of an interpolated text.</summary>
    [InterpolatedStringHandler]
    public readonly struct Words
    {
        private readonly List<Part> parts;

        /// <summary>Begins a text.</summary>
        /// <param name="literalLength">Letters outside of holes.</param>
        /// <param name="formattedCount">Holes.</param>
        public Words(int literalLength, int formattedCount)
        {
            _ = literalLength;
            parts = new List<Part>((2 * formattedCount) + 1);
        }

        internal IReadOnlyList<Part> Parts => parts;

        /// <summary>Text between holes.</summary>
        public void AppendLiteral(string text) => parts.Add(new Part(text, null));

        /// <summary>Words in a hole; nothing for null.</summary>
        public void AppendFormatted(string? text)
        {
            if (!string.IsNullOrEmpty(text))
            {
                AppendLiteral(text);
            }
        }

        /// <summary>A sentence within another.</summary>
        public void AppendFormatted(Sentence sentence)
        {
            ArgumentNullException.ThrowIfNull(sentence);
            parts.AddRange(sentence.parts);
        }

        /// <summary>A quantity.</summary>
        public void AppendFormatted(Quantity quantity) => parts.Add(new Part(quantity, null));

        /// <summary>A number, a day or an instant.</summary>
        public void AppendFormatted<T>(T value, string? format = null)
            where T : IFormattable => parts.Add(new Part(value, format));
    }

    internal sealed class SentenceJson : JsonConverter<Sentence>
    {
        public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString() ?? "";

        public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
    }
}
