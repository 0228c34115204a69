// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.log.ParentAction;
import picocli.CommandLine.Command;

/** Open a table now, whatever the order says. */
@Command(name = "open", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold open 7 --child Mina")
final class OpenCommand extends WholeTable {
    OpenCommand() {
        super(ParentAction.OpenTable::new, "command.open.done");
    }
}
