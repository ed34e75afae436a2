using System.Buffers;
using System.Text;
using System.Text.Unicode;

namespace EstateWater.Data.Folder;

/// <summary>A file of the folder as UTF-8 bytes, without a byte-order mark.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding Lenient = new(encoderShouldEmitUTF8Identifier: false);

    public static ReadOnlySpan<byte> WithoutByteOrderMark(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;

    /// <summary>The offset of the first byte that is not UTF-8; <see langword="null"/> when all are.</summary>
    public static int? FirstInvalidByte(ReadOnlySpan<byte> bytes)
    {
        if (Utf8.IsValid(bytes))
        {
            return null;
        }

        var characters = new char[bytes.Length];
        var status = Utf8.ToUtf16(bytes, characters, out var read, out _, replaceInvalidSequences: false);
        return status == OperationStatus.Done ? null : read;
    }

    /// <summary>The line, from 1, that an offset lies on.</summary>
    public static int LineAt(ReadOnlySpan<byte> bytes, long offset) => 1 + bytes[..(int)offset].Count((byte)'\n');

    /// <summary>The text; what is not UTF-8 becomes U+FFFD, so that the rest of the file can be judged too.</summary>
    public static string Decode(ReadOnlySpan<byte> bytes) => Lenient.GetString(bytes);
}
