using System.Text.Json;
using System.Text.Json.Serialization;

namespace EstateWater.Agronomy.Units;

/// <summary>Keeps a sentence with its quantities, for stores whose pages tell it to readers with units of their own. Plain text is read as well.</summary>
public sealed class SentenceKeeping : JsonConverter<Sentence>
{
    /// <inheritdoc/>
    public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String
            ? reader.GetString()!
            : new Sentence([.. JsonSerializer.Deserialize<List<Kept>>(ref reader, options)!.Select(kept => kept.ToPart())]);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(value);
        JsonSerializer.Serialize(writer, value.Parts.Select(Kept.Of).ToList(), options);
    }

    // One of the values, with the format in which it is told.
    private sealed record Kept
    {
        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public string? Text { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public Quantity? Quantity { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public double? Number { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public DateOnly? Day { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public DateTimeOffset? At { get; init; }

        [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
        public string? Format { get; init; }

        public static Kept Of(Sentence.Part part) => part.Value switch
        {
            string text => new Kept { Text = text },
            Quantity quantity => new Kept { Quantity = quantity },
            DateOnly day => new Kept { Day = day, Format = part.Format },
            DateTimeOffset at => new Kept { At = at, Format = part.Format },
            double number => new Kept { Number = number, Format = part.Format },
            int number => new Kept { Number = number, Format = part.Format },
            var other => throw new NotSupportedException($"A sentence with a {other.GetType().Name} cannot be kept: words, quantities, numbers, days and instants can."),
        };

        public Sentence.Part ToPart() => (Text, Quantity, Number, Day, At) switch
        {
            ({ } text, _, _, _, _) => new(text, null),
            (_, { } quantity, _, _, _) => new(quantity, null),
            (_, _, { } number, _, _) => new(number, Format),
            (_, _, _, { } day, _) => new(day, Format),
            (_, _, _, _, { } at) => new(at, Format),
            _ => throw new JsonException("A part of a sentence is a text, a quantity, a number, a day or an instant."),
        };
    }
}
