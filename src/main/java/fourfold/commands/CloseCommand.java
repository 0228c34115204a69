// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.log.ParentAction;
import picocli.CommandLine.Command;

/** Close a table: no new family comes from it. */
@Command(
        name = "close",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold close 7 --child Mina")
final class CloseCommand extends WholeTable {
    CloseCommand() {
        super(ParentAction.CloseTable::new, "command.close.done");
    }
}
