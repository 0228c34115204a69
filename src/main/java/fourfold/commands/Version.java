// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version and the build, as the build wrote them into the program. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {words()};
    }

    /** Version, build, and the Java it runs on, in one line. */
    static String words() {
        return "fourfold " + property("version") + " (build " + property("build") + ", Java "
                + Runtime.version().feature() + ")";
    }

    /** The version alone. */
    static String number() {
        return property("version");
    }

    private static String property(String what) {
        Properties built = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("build.properties")) {
            if (in != null) {
                built.load(in);
            }
        } catch (IOException e) {
            // What can't be read is shown as unknown.
        }
        return built.getProperty(what, "unknown");
    }
}
