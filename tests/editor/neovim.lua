-- Runs the lines of server/EDITORS.md for this editor (LAMELLA_LINES) on the file named, and prints, as one line of
-- JSON, what the language server published: the messages as they came, not as this editor stored them.
local published

-- Neovim before 0.8 detects file types by Lua only when asked, and has no vim.lsp.start.
vim.g.do_filetype_lua = 1
vim.lsp.start = vim.lsp.start or function(config)
  local client = vim.lsp.start_client(config)
  if client then vim.lsp.buf_attach_client(0, client) end
  return client
end

local store = vim.lsp.handlers['textDocument/publishDiagnostics']
vim.lsp.handlers['textDocument/publishDiagnostics'] = function(problem, result, ...)
  if result.uri == vim.uri_from_fname(vim.fn.fnamemodify(vim.env.LAMELLA_FILE, ':p')) then
    published = result.diagnostics
  end
  return store(problem, result, ...)
end

dofile(vim.env.LAMELLA_LINES)
vim.cmd('filetype on')
vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.LAMELLA_FILE))

local answered = vim.wait(20000, function() return published ~= nil end, 20)
if answered then io.stdout:write(vim.json.encode(published) .. '\n') end
vim.lsp.stop_client(vim.lsp.get_active_clients())
vim.wait(5000, function() return #vim.lsp.get_active_clients() == 0 end, 20)
vim.cmd(answered and 'qall!' or 'cquit')
