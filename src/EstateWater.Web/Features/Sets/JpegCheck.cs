using System.Buffers.Binary;

namespace EstateWater.Web.Features.Sets;

/// <summary>Whether bytes are a JPEG picture as our page makes them (ITU-T T.81, annex B: markers and frame header).</summary>
public static class JpegCheck
{
    /// <summary>Longest side. [px]</summary>
    public const int LongestSide = 1600;

    private const byte Marker = 0xFF;

    /// <summary>What is wrong with it; null when nothing is.</summary>
    public static JpegMistake? Mistake(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 4 || bytes[0] != Marker || bytes[1] != 0xD8 || bytes[^2] != Marker || bytes[^1] != 0xD9)
        {
            return JpegMistake.NotWhole;
        }

        return Size(bytes) switch
        {
            null => JpegMistake.NoFrame,
            ( < 1 or > LongestSide, _) or (_, < 1 or > LongestSide) => JpegMistake.TooLarge,
            _ => null,
        };
    }

    /// <summary>Width and height of the frame; null where the bytes have none.</summary>
    private static (int Width, int Height)? Size(ReadOnlySpan<byte> bytes)
    {
        var at = 2;
        while (at + 9 < bytes.Length && bytes[at] == Marker)
        {
            var kind = bytes[at + 1];
            if (IsFrame(kind))
            {
                return (BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 7)..]), BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 5)..]));
            }

            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
            if (length < 2)
            {
                return null;
            }

            at += 2 + length;
        }

        return null;
    }

    // SOF0 to SOF15, without DHT, JPG and DAC, which share their range.
    private static bool IsFrame(byte kind) => kind is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);
}

/// <summary>What is wrong with a picture.</summary>
public enum JpegMistake
{
    /// <summary>It does not begin or end as one.</summary>
    NotWhole,

    /// <summary>Nothing in it tells its size.</summary>
    NoFrame,

    /// <summary>A side is longer than <see cref="JpegCheck.LongestSide"/>, or has no length.</summary>
    TooLarge,
}
