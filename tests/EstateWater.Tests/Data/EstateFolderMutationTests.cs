using CsCheck;

namespace EstateWater.Tests.Data;

public sealed class EstateFolderMutationTests
{
    private static readonly Gen<byte> Bytes = Gen.OneOf(Gen.Byte, Gen.OneOf(",\"\n\r;{}[]:-.0eE\\ "u8.ToArray()));

    [Fact]
    public void Spoiled_bytes_give_defects_or_an_estate_and_never_an_exception()
    {
        using var small = new SmallEstate();
        var originals = SmallEstate.FileNames.Select(name => (Name: name, Bytes: File.ReadAllBytes(Path.Combine(small.Path, name)))).ToArray();
        var mutation = Gen.Select(Gen.Int[0, originals.Length - 1], Gen.Select(Gen.Double.Unit, Bytes, Gen.Int[0, 2]).Array[1, 5]);

        mutation.Sample(
            (file, changes) =>
            {
                var (name, original) = originals[file];
                small.Put(name, changes.Aggregate(original, (bytes, change) => Spoil(bytes, change.Item1, change.Item2, change.Item3)));
                var reading = small.Read();
                small.Put(name, original);

                // Each file is whole or defective, and what is defective says so in one line that names it.
                return (reading.Contents is null) == (reading.Defects.Count > 0)
                    && reading.Defects.All(d => d.Line >= 1 && d.Message.Length > 0 && !d.ToString().Contains('\n'));
            },
            iter: 1500,
            threads: 1);
    }

    private static byte[] Spoil(byte[] bytes, double at, byte with, int how)
    {
        var index = (int)(at * Math.Max(bytes.Length - 1, 0));
        return how switch
        {
            0 => [.. bytes[..index], with, .. bytes.Skip(index + 1)],
            1 => [.. bytes[..index], with, .. bytes[index..]],
            _ => bytes[..index],
        };
    }
}
