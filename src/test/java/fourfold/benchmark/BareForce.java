// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Nothing but forced writes: appends a page to a file so many times, and prints how long each took in nanoseconds. */
final class BareForce {
    private BareForce() {}

    public static void main(String[] arguments) throws IOException {
        try (FileChannel file =
                FileChannel.open(Path.of(arguments[0]), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
                long before = System.nanoTime();
                file.write(ByteBuffer.allocate(4096));
                file.force(false);
                System.out.println(System.nanoTime() - before);
            }
        }
    }
}
