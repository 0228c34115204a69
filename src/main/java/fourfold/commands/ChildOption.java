package fourfold.commands;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which child a command is about. */
final class ChildOption {
    @Option(
            names = "--child",
            paramLabel = "NAME",
            description = "Whose answers. Not needed if there is only one child.")
    private @Nullable String name;

    Optional<String> name() {
        return Optional.ofNullable(name);
    }
}
